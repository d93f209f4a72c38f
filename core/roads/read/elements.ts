export type Tags = ReadonlyMap<string, string>;
export const NO_TAGS: Tags = new Map();

export type Member = { readonly kind: 'node' | 'way' | 'relation'; readonly id: number; readonly role: string };

/** What a file says about itself. */
export type FileHead = {
  readonly writtenBy: string;
  readonly dataOf: string;
  /** Whose roads they are, and under which licence, where they are not OpenStreetMap's: invented ones, such as of a sample. */
  readonly owner: { readonly attribution: string; readonly licence: string } | null;
};

/**
 * What a reader of a format hands on, whatever the format. Ways and relations come in the first reading and nodes in the second;
 * ways that are no roads and relations that restrict no turn may be handed on as null.
 */
export type ElementSink = {
  readonly head: (head: Partial<FileHead>) => void;
  /** Coordinates in steps of 1e-7 degrees. */
  readonly node: (id: number, lon: number, lat: number, tags: Tags) => void;
  readonly way: (way: { readonly id: number; readonly refs: readonly number[]; readonly tags: Tags } | null) => void;
  readonly relation: (relation: { readonly tags: Tags; readonly members: readonly Member[] } | null) => void;
};

/** Which elements a reading is for. */
export type Reading = 'ways' | 'nodes';
