import { cleanText } from '../clean-text.ts';

/** A content line of an iCalendar file is at most so long, in octets, without its end (RFC 5545, section 3.1). */
const MOST_OCTETS = 75;

/**
 * A content line (RFC 5545, section 3.1): folded where it is longer than 75 octets, never inside a character, with CRLF at the end.
 * @param value as it stands in the file: texts are escaped before
 */
export function contentLine(name: string, value: string): string {
  const lines: string[] = [];
  let line = '';
  let octets = 0;
  for (const character of `${name}:${value}`) {
    const size = octetsOf(character);
    if (octets + size > MOST_OCTETS) {
      lines.push(line);
      // The space that a folded line begins with counts too.
      line = ' ';
      octets = 1;
    }
    line += character;
    octets += size;
  }
  return [...lines, line].map((each) => `${each}\r\n`).join('');
}

/** Octets of a character in UTF-8. */
function octetsOf(character: string): number {
  const point = character.codePointAt(0) ?? 0;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}

/**
 * A value of type TEXT (RFC 5545, section 3.3.11): backslash, semicolon and comma behind a backslash, ends of lines as \n.
 * Control characters, which a text must not hold, are left out.
 */
export function calendarText(text: string): string {
  return cleanText(text)
    .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replaceAll('\n', '\\n');
}

/** A date with local time, "20270316T073000", of "2027-03-16T07:30:00": floating, the same on the clock wherever it is read. */
export function floatingTime(local: string): string {
  return local.replace(/[-:]/g, '');
}

/** An instant in UTC, "20270316T113000Z". */
export function utcTime(ms: number): string {
  return `${floatingTime(new Date(ms).toISOString().slice(0, 19))}Z`;
}
