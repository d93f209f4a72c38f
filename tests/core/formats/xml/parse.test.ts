import { describe, expect, it } from 'vitest';
import { fieldOf, numberAttribute, parseXml, rootName, type XmlElement } from '../../../../core/formats/xml/index.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
const latin = (text: string) => Uint8Array.from(text, (character) => character.charCodeAt(0));
const utf16 = (text: string) => {
  const units = Uint16Array.from(`\ufeff${text}`, (character) => character.charCodeAt(0));
  return new Uint8Array(units.buffer);
};

function rootOf(bytes: Uint8Array): XmlElement {
  const document = parseXml(bytes, 'a.xml');
  if (!document.ok) throw new Error(`${document.error.where}: ${document.error.detail}`);
  return document.value;
}

const refusal = (bytes: Uint8Array) => {
  const document = parseXml(bytes, 'a.xml');
  if (document.ok) throw new Error('was read');
  return [document.error.code, document.error.where];
};

describe('XML', () => {
  it('gives elements, attributes and texts without prefixes, with their lines', () => {
    const root = rootOf(
      utf8('<k:kml xmlns:k="urn:k">\n<k:name a="1">Oak &amp; <![CDATA[<elm>]]><b/></k:name></k:kml>'),
    );
    expect(root.name).toBe('kml');
    const [name] = root.children;
    expect(name).toMatchObject({ name: 'name', text: 'Oak & <elm>', line: 2 });
    expect(name?.attributes.get('a')).toBe('1');
    expect(name?.children.map((each) => each.name)).toEqual(['b']);
  });

  it('lets an "&" before a blank stand for itself', () => {
    expect(rootOf(utf8('<a>Vale & Sons &amp; Co</a>')).text).toBe('Vale & Sons & Co');
    expect(rootOf(utf8('<a>1 & <![CDATA[2 & 3 &amp; ]]>4 & 5</a>')).text).toBe('1 & 2 & 3 &amp; 4 & 5');
  });

  it('reads prefixes that nobody declared', () => {
    expect(rootOf(utf8('<gpx x:v="2"><ext:hr>1</ext:hr></gpx>')).children[0]).toMatchObject({ name: 'hr', text: '1' });
  });

  it.each([
    ['UTF-8 with a byte order mark', utf8('\ufeff<a><n>Grün</n></a>')],
    ['UTF-8 as declared', utf8('<?xml version="1.0" encoding="UTF-8"?><a><n>Grün</n></a>')],
    ['windows-1252 as declared', latin('<?xml version="1.0" encoding="windows-1252"?><a><n>Grün</n></a>')],
    ['ISO-8859-1 as declared', latin('<?xml version="1.0" encoding="ISO-8859-1"?><a><n>Grün</n></a>')],
    ['UTF-16', utf16('<?xml version="1.0" encoding="UTF-16"?><a><n>Grün</n></a>')],
  ])('reads %s', (_, bytes) => expect(fieldOf(rootOf(bytes), 'n')).toBe('Grün'));

  it.each([
    ['another encoding', latin('<?xml version="1.0" encoding="Shift_JIS"?><a/>'), 'format-invalid', 'a.xml, line 1'],
    ['bytes that are no UTF-8', latin('<a>Gr\u00fcn</a>'), 'format-invalid', 'a.xml'],
    ['a document type', utf8('<?xml version="1.0"?>\n<!DOCTYPE a>\n<a/>'), 'not-allowed', 'a.xml, line 2'],
    ['entities', utf8('<!DOCTYPE a [<!ENTITY b "bbbb">]><a>&b;</a>'), 'not-allowed', 'a.xml, line 1'],
    ['an entity nobody defined', utf8('<a>\n&b;</a>'), 'format-invalid', 'a.xml, line'],
    ['deep nesting', utf8(`${'<a>'.repeat(61)}${'</a>'.repeat(61)}`), 'file-too-large', 'a.xml, line 1'],
    ['masses of elements', utf8(`<a>\n${'<b/>'.repeat(3_000_000)}</a>`), 'file-too-large', 'a.xml, line 2'],
    [
      'masses of attributes',
      utf8(`<a ${Array.from({ length: 201 }, (_, at) => `b${at}="1"`).join(' ')}/>`),
      'file-too-large',
      'a.xml, line 1',
    ],
    ['an element that does not end', utf8('<a>\n<b>'), 'format-invalid', 'a.xml, line 2'],
    ['a tag cut short', utf8('<a>\n\n<b c="'), 'format-invalid', 'a.xml, line 3'],
    ['a comment cut short', utf8('<a>\n<!-- b'), 'format-invalid', 'a.xml, line 2'],
    ['masses of data that do not end', utf8(`<a>& ${'<![CDATA['.repeat(500_000)}`), 'format-invalid', 'a.xml, line 1'],
    ['crossed tags', utf8('<a><b></a></b>'), 'format-invalid', 'a.xml, line 1'],
    ['more bytes than are read', new Uint8Array(40 * 1024 * 1024 + 1), 'file-too-large', 'a.xml'],
    ['no elements', utf8('hello'), 'format-invalid', 'a.xml'],
    ['nothing', utf8(''), 'format-invalid', 'a.xml'],
  ])('refuses %s', (_, bytes, code, where) => {
    const [foundCode, foundWhere] = refusal(bytes);
    expect(foundCode).toBe(code);
    expect(foundWhere?.startsWith(where)).toBe(true);
  });

  it('reads numbers of attributes strictly', () => {
    const root = rootOf(utf8('<a b="-1.5e2" c="12x" d="" e="Infinity" f=" 7. "/>'));
    expect(['b', 'c', 'd', 'e', 'f', 'g'].map((name) => numberAttribute(root, name))).toEqual([
      -150,
      null,
      null,
      null,
      7,
      null,
    ]);
  });

  it('finds the name of the root without parsing', () => {
    expect(rootName(utf8('\ufeff<?xml version="1.0"?>\n<!-- a <b> -->\n<k:kml>'))).toBe('kml');
    expect(rootName(utf16('<gpx version="1.1">'))).toBe('gpx');
    expect(rootName(utf8('{"a": "<kml>"}'))).toBeNull();
  });
});
