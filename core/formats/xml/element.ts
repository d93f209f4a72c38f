import { readDecimal } from '../text/index.ts';

/** An element of an XML file. Namespaces are left out: files of all versions and without any are read alike. */
export type XmlElement = {
  /** Without its prefix. */
  readonly name: string;
  /** By name without prefix. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** The element's own text, with that of its children left out, without outer blanks. */
  readonly text: string;
  /** Line in the file, counted from 1. */
  readonly line: number;
};

/** The first child of that name; null where there is none. */
export function childOf(element: XmlElement, name: string): XmlElement | null {
  return element.children.find((each) => each.name === name) ?? null;
}

/** All children of that name, in the order of the file. */
export function childrenOf(element: XmlElement, name: string): readonly XmlElement[] {
  return element.children.filter((each) => each.name === name);
}

/** The text of a child; null where there is none or it is empty. */
export function fieldOf(element: XmlElement, name: string): string | null {
  const text = childOf(element, name)?.text ?? '';
  return text === '' ? null : text;
}

/** An attribute as a decimal number; null where there is none or it is no number. */
export function numberAttribute(element: XmlElement, name: string): number | null {
  return readDecimal(element.attributes.get(name)?.trim() ?? '');
}
