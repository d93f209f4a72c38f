/** The little of wellknown that is used here; the package has no types. core/tsconfig.json points the package to this file. */
declare function wellknown(text: string): unknown;
export = wellknown;
