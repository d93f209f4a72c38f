import { err, type Result } from '../../base/index.ts';

export type XmlFaultCode = 'not-allowed' | 'file-too-large' | 'format-invalid';

/** Leads from the place of a fault straight out of the parser; caught where parsing began. */
export class XmlFault extends Error {
  readonly code: XmlFaultCode;
  readonly detail: string;
  constructor(code: XmlFaultCode, detail: string) {
    super(detail);
    this.code = code;
    this.detail = detail;
  }
}

export function malformed(what: string): XmlFault {
  return new XmlFault('format-invalid', `The file is no sound XML: ${what}.`);
}

export function tooMuch(what: string): XmlFault {
  return new XmlFault('file-too-large', `The file holds more ${what} than is read.`);
}

const HINTS: Readonly<Record<XmlFaultCode, string>> = {
  'not-allowed': 'Remove the lines with <!DOCTYPE and <!ENTITY, or export the file again.',
  'file-too-large': 'Export fewer outlines or fewer details at a time, or use a Shapefile or GeoPackage.',
  'format-invalid': 'The file was cut short or damaged. Export it again.',
};

export function refusal({ code, detail }: XmlFault, where: string): Result<never> {
  return err(code, where, detail, HINTS[code]);
}
