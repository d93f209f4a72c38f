import { createNamer } from '../own-names.ts';
import { readDecimal } from '../text/index.ts';
import type { AttributeValue } from '../types.ts';
import { childrenOf, fieldOf, type XmlElement } from '../xml/index.ts';

/** Types of the fields that a file's schemas declare, by field name. */
export type FieldTypes = ReadonlyMap<string, string>;

const NUMBER_TYPES = ['int', 'uint', 'short', 'ushort', 'float', 'double'];

/** Reads the schemas of a document, wherever they stand. */
export function readFieldTypes(root: XmlElement): FieldTypes {
  const own = childrenOf(root, 'Schema').flatMap((schema) =>
    childrenOf(schema, 'SimpleField').map(
      (field) => [field.attributes.get('name') ?? '', field.attributes.get('type') ?? ''] as const,
    ),
  );
  return new Map([...root.children.flatMap((child) => (isHolder(child) ? [...readFieldTypes(child)] : [])), ...own]);
}

const isHolder = ({ name }: XmlElement): boolean => name === 'Document' || name === 'Folder';

/** Name, description, address and time of a placemark, and all of its extended data. No value is lost to a like name. */
export function readAttributes(placemark: XmlElement, types: FieldTypes): Readonly<Record<string, AttributeValue>> {
  const own = createNamer();
  const found: (readonly [string, AttributeValue])[] = [];
  const add: Add = (name, value) => found.push([own(name === '' ? 'value' : name), value]);
  for (const name of ['name', 'description', 'address', 'phoneNumber']) addField(placemark, name, name, add);
  for (const stamp of childrenOf(placemark, 'TimeStamp')) addField(stamp, 'when', 'time', add);
  for (const extended of childrenOf(placemark, 'ExtendedData')) {
    for (const child of extended.children) readExtended(child, types, add);
  }
  return Object.fromEntries(found);
}

type Add = (name: string, value: AttributeValue) => void;

function addField(holder: XmlElement, field: string, name: string, add: Add): void {
  const text = fieldOf(holder, field);
  if (text !== null) add(name, text);
}

/** Data with a value, data of a schema, or an element of somebody's own namespace (KML 2.3, section 9.2). */
function readExtended(element: XmlElement, types: FieldTypes, add: Add): void {
  const name = element.attributes.get('name') ?? '';
  if (element.name === 'Data') add(name, fieldOf(element, 'value') ?? '');
  else if (element.name === 'SchemaData') for (const field of element.children) readSimple(field, types, add);
  else add(element.name, element.text);
}

function readSimple(element: XmlElement, types: FieldTypes, add: Add): void {
  const name = element.attributes.get('name') ?? element.name;
  add(name, typed(element.text, types.get(name) ?? ''));
}

function typed(text: string, type: string): AttributeValue {
  if (text === '') return null;
  if (type === 'bool' && /^(?:true|false|1|0)$/i.test(text)) return /^(?:true|1)$/i.test(text);
  return NUMBER_TYPES.includes(type.toLowerCase()) ? (readDecimal(text) ?? text) : text;
}
