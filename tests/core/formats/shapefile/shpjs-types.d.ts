/** The little of shpjs that the tests use; the package has no types of its own. */
declare module 'shpjs' {
  export function parseZip(bytes: ArrayBuffer): Promise<unknown>;
}
