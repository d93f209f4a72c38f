/** One step of the file format. A step that was ever shipped is never changed; a new one is added after it. */
export type Migration = {
  /** NNN-name, NNN counting from 001: the user_version that the file has afterwards. */
  readonly name: string;
  readonly statements: readonly string[];
};
