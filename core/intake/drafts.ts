import { type Issue, issue } from '../base/index.ts';
import type { Property } from '../book/index.ts';
import type { ExclusionRecord, GateRecord, IntakeRecord, LawnRecord, ParcelRecord } from './record.ts';

/** A property in the making: what the file says of it, and what the book has of it already. */
export type Draft = {
  /** The id in the file, or null where it gives none. */
  readonly fileId: string | null;
  /** The property of the book that it is; null for a new one. */
  before: Property | null;
  readonly lawns: LawnRecord[];
  readonly exclusions: ExclusionRecord[];
  readonly gates: GateRecord[];
  readonly parcels: ParcelRecord[];
};

export function newDraft(fileId: string | null, before: Property | null = null): Draft {
  return { fileId, before, lawns: [], exclusions: [], gates: [], parcels: [] };
}

/** Places of the records in a draft, in the order of the file. */
export function recordsOf(draft: Draft): readonly IntakeRecord[] {
  const all = [...draft.lawns, ...draft.exclusions, ...draft.gates, ...draft.parcels];
  return all.sort((left, right) => left.index - right.index);
}

export type Drafting = {
  readonly drafts: readonly Draft[];
  /** Remarks on single records, by their place. */
  readonly remarks: ReadonlyMap<number, readonly Issue[]>;
  /** Records that cannot be a property, each with its error. */
  readonly refused: ReadonlyMap<number, Issue>;
};

/**
 * Makes drafts of the records that are properties: those that name a property join under its id, each other one is its own. Of two
 * records with one id the second gets another id where it has an outline, and is refused where it is a line of a table.
 */
export function draftLawns(records: readonly IntakeRecord[]): Drafting {
  const lawns = records.flatMap((each) => (each.kind === 'lawn' && !each.isZone ? [each] : []));
  const joined = new Set(lawns.flatMap((each) => each.joins ?? []));
  const byId = new Map<string, Draft>();
  const drafts: Draft[] = [];
  const remarks = new Map<number, readonly Issue[]>();
  const refused = new Map<number, Issue>();
  const open = (id: string | null): Draft => {
    const draft = newDraft(id);
    drafts.push(draft);
    if (id !== null) byId.set(id, draft);
    return draft;
  };
  for (const lawn of lawns) {
    if (lawn.joins !== null) {
      (byId.get(lawn.joins) ?? open(lawn.joins)).lawns.push(lawn);
      continue;
    }
    const known = lawn.id === null ? undefined : byId.get(lawn.id);
    // The record that others name as their property is part of it, once.
    const isMain = lawn.id !== null && joined.has(lawn.id) && !known?.lawns.some((each) => each.joins === null);
    if (known === undefined) open(lawn.id).lawns.push(lawn);
    else if (isMain) known.lawns.push(lawn);
    else if (lawn.ground === null) refused.set(lawn.index, twice(lawn, known));
    else {
      const id = freeId(lawn.id ?? 'lawn', (each) => byId.has(each) || joined.has(each));
      open(id).lawns.push(lawn);
      remarks.set(lawn.index, [renamed(lawn, id)]);
    }
  }
  return { drafts, remarks, refused };
}

/** The stem itself or the stem with the lowest number that is free. */
export function freeId(stem: string, isTaken: (id: string) => boolean): string {
  if (!isTaken(stem)) return stem;
  const short = stem.slice(0, 112);
  let count = 2;
  while (isTaken(`${short}-${count}`)) count += 1;
  return `${short}-${count}`;
}

function twice(lawn: LawnRecord, first: Draft): Issue {
  const earlier = first.lawns[0]?.where ?? '';
  const message = `The id ${lawn.id} is in ${earlier} already. Give every lawn its own id.`;
  return issue('error', 'duplicate-id', lawn.where, message);
}

function renamed(lawn: LawnRecord, id: string): Issue {
  return issue('warning', 'duplicate-id', lawn.where, `The id ${lawn.id} is there before; this one is now ${id}.`);
}
