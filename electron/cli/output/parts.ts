import * as v from 'valibot';

/** Pieces that the answers of several commands are made of. */

export const figure = v.pipe(v.number(), v.finite());
export const text = v.string();
export const format = (name: string) => ({ format: v.literal(name), version: v.literal(1) });

/** Something found in the input. The codes are listed in docs/cli.md. */
export const issueSchema = v.strictObject({
  code: text,
  severity: v.picklist(['error', 'warning', 'note']),
  where: text,
  message: text,
});

/** Why a command failed. */
export const errorSchema = v.strictObject({ code: text, where: text, detail: text, hint: text });

export const methodSchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('machine'), machineId: text, headId: text }),
  v.strictObject({ kind: v.literal('hand'), handMethodId: text }),
]);

export const unit = v.picklist(['fl-oz', 'oz', 'lb']);
