import type { InferOutput } from 'valibot';
import * as v from 'valibot';
import { err, ok, type Result } from '../base/index.ts';
import type { Frozen, Position } from '../book/index.ts';
import type { draftSchema } from './draft-schema.ts';
import { draftSchema as schema } from './draft-schema.ts';
import { circleThrough, rectangleBySides } from './shapes.ts';
import type { Corners } from './types.ts';
import { closeWalk, isWalkedRound } from './walk.ts';

/** Something that is being drawn and is not yet in the book: plain data, stored at every step. */
export type Draft = Frozen<InferOutput<typeof draftSchema>>;
/** What is drawn, and for which property. A new thing has an id that the book does not know yet. */
export type DraftPurpose = Draft['purpose'];
/** How the corners of a draft come about. */
export type DraftTool = Draft['tool'];
/** One change of a draft's corners. */
export type DraftStep = Draft['undo'][number];
/** What of a draft is given when it begins; the rest starts empty. */
export type DraftStart = Pick<Draft, 'purpose' | 'tool'> & Partial<Draft>;

/** A draft with nothing drawn yet, or with what it is given to start from. */
export function beginDraft(start: DraftStart): Draft {
  return { corners: [], undo: [], redo: [], ...start };
}

/** Reads a stored draft. Error: `format-invalid` where it is none. */
export function readDraft(value: unknown): Result<Draft> {
  const parsed = v.safeParse(schema, value);
  if (parsed.success) return ok(parsed.output);
  const [fault] = parsed.issues;
  const where = v.getDotPath(fault) ?? 'draft';
  return err('format-invalid', where, 'The stored draft cannot be read.', 'Draw it again.');
}

/** The property that a draft is drawn for; null for an area to drive round, which is of no lawn. */
export function propertyIdOf(purpose: DraftPurpose): string | null {
  return purpose.kind === 'avoid' ? null : purpose.propertyId;
}

/** True for what is drawn as a single place: a gate, the parking point, a hose stand. */
export function isPlace(purpose: DraftPurpose): boolean {
  return purpose.kind === 'gate' || purpose.kind === 'parking' || purpose.kind === 'hose-stand';
}

/** True for what is closed to an outline when it is finished; a line that splits a zone and a place are not. */
export function isOutline(purpose: DraftPurpose): boolean {
  return purpose.kind !== 'split-line' && !isPlace(purpose);
}

/**
 * The outline as it would be finished now: a rectangle from two corners and a point on its far side, a circle from its
 * centre and a point on its rim, a walk with its closing error spread. While there are too few corners for that, they
 * are given as they are.
 */
export function draftOutline(draft: Draft): Corners {
  const [first, second, third] = draft.corners;
  if (draft.base !== undefined || !isOutline(draft.purpose)) return draft.corners;
  switch (draft.tool) {
    case 'polygon':
      return draft.corners;
    case 'rectangle':
      if (first === undefined || second === undefined || third === undefined) return draft.corners;
      return outlineOr(rectangleBySides(first, second, { kind: 'through', point: third }), draft.corners);
    case 'circle':
      return first === undefined || second === undefined
        ? draft.corners
        : outlineOr(circleThrough(first, second), draft.corners);
    case 'walk':
      return isWalkedRound(draft.corners) ? closeWalk(draft.corners).corners : draft.corners;
  }
}

/** How many corners the tool still needs before the draft can be finished; 0 where it has enough. */
export function cornersWanted(draft: Draft): number {
  return Math.max(0, leastCorners(draft) - draft.corners.length);
}

function leastCorners({ purpose, tool, base }: Draft): number {
  if (isPlace(purpose)) return 1;
  if (purpose.kind === 'split-line') return 2;
  return tool === 'circle' && base === undefined ? 2 : 3;
}

function outlineOr(made: Result<Corners>, otherwise: Corners): Corners {
  return made.ok ? made.value : otherwise;
}

/** The place that a draft of a single place marks; its last corner, so that a second click moves it. */
export function draftPlace(draft: Draft): Position | null {
  return draft.corners.at(-1) ?? null;
}
