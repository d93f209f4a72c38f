const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/**
 * A text for use in XML. Characters that XML 1.0 (section 2.2) cannot hold at all become U+FFFD; ends of lines that a parser
 * would change are written as numbers.
 */
export function xmlText(text: string): string {
  return Array.from(text, (character) => {
    const point = character.codePointAt(0) ?? 0;
    if (!isAllowed(point)) return '\ufffd';
    if (point === 0x0d || point === 0x85 || point === 0x2028) return `&#${point};`;
    return ENTITIES[character] ?? character;
  }).join('');
}

function isAllowed(point: number): boolean {
  if (point < 0x20) return point === 0x09 || point === 0x0a || point === 0x0d;
  return !(point >= 0xd800 && point <= 0xdfff) && point !== 0xfffe && point !== 0xffff;
}

/** An element with a text; nothing where the text is empty. */
export function xmlField(name: string, text: string): string {
  return text === '' ? '' : `<${name}>${xmlText(text)}</${name}>`;
}
