import { err, ok, type Result } from '../../../../core/base/index.ts';
import type { Timing } from '../../../../core/book/index.ts';
import type { PublishedTiming } from '../../../../core/round/timing/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { whenWords } from '../../../texts/round/index.ts';

export type TimingKind = Timing['kind'];

/** A timing that may still lack figures. Nothing is filled in that the user, or the source that was picked, does not say. */
export type TimingDraft = {
  readonly kind: TimingKind;
  readonly name: string;
  readonly source: string;
  readonly station?: string | undefined;
  readonly opens?: string | undefined;
  readonly best?: string | undefined;
  readonly closes?: string | undefined;
  readonly from?: string | undefined;
  readonly smoothDays?: number | undefined;
  readonly gapDays?: number | undefined;
  readonly depthIn?: number | undefined;
  readonly course?: 'rising' | 'falling' | undefined;
  readonly meanOfDays?: number | undefined;
  readonly forDays?: number | undefined;
  readonly opensAtF?: number | undefined;
  readonly bestAtF?: number | undefined;
  readonly closesAtF?: number | undefined;
  readonly baseF?: number | undefined;
  readonly opensAt?: number | undefined;
  readonly bestAt?: number | undefined;
  readonly closesAt?: number | undefined;
};
type Member = keyof TimingDraft;

/** How figures are worked with, not figures themselves: these may be set beforehand, and are shown. */
const WORKING = { smoothDays: 7, gapDays: 3 } as const;

export function emptyDraft(kind: TimingKind): TimingDraft {
  if (kind === 'calendar') return { kind, name: '', source: '' };
  if (kind === 'degree-days') return { kind, name: '', source: '', ...WORKING };
  return { kind, name: '', source: '', meanOfDays: 1, forDays: 1, ...WORKING };
}

/** The figures of a source with its words; what it leaves open stays open. */
export function draftOf({ title, source, figures }: PublishedTiming): TimingDraft {
  return { ...emptyDraft(figures.kind), name: title, source, ...figures };
}

type Asked = { readonly member: Member; readonly words: string; readonly optional?: true };

const WORKED: readonly Asked[] = [
  { member: 'smoothDays', words: whenWords.draft.smoothedOver },
  { member: 'gapDays', words: whenWords.draft.gapsBridged },
  { member: 'station', words: whenWords.draft.station, optional: true },
];

/** What each kind is made of, in the order of the form. */
const MEMBERS: Readonly<Record<TimingKind, readonly Asked[]>> = {
  calendar: [
    { member: 'opens', words: whenWords.draft.opensOn },
    { member: 'best', words: whenWords.draft.bestOn, optional: true },
    { member: 'closes', words: commonWords.lastUsefulDay },
  ],
  'soil-temperature': [
    { member: 'depthIn', words: whenWords.draft.depth },
    { member: 'course', words: whenWords.draft.risingOrFalling },
    { member: 'from', words: whenWords.draft.lookedForFrom },
    { member: 'meanOfDays', words: whenWords.draft.meanOfDays },
    { member: 'forDays', words: whenWords.draft.heldForDays },
    { member: 'opensAtF', words: whenWords.draft.opensAt, optional: true },
    { member: 'bestAtF', words: whenWords.draft.bestAt, optional: true },
    { member: 'closesAtF', words: whenWords.draft.closesAt },
    ...WORKED,
  ],
  'degree-days': [
    { member: 'baseF', words: whenWords.draft.base },
    { member: 'from', words: whenWords.draft.countedFrom },
    { member: 'opensAt', words: whenWords.draft.opensAt },
    { member: 'bestAt', words: whenWords.draft.bestAt, optional: true },
    { member: 'closesAt', words: whenWords.draft.closesAt },
    ...WORKED,
  ],
};

/** What is still missing, in the words of the form. */
export function missingOf(draft: TimingDraft): readonly string[] {
  const missing = MEMBERS[draft.kind].filter(
    ({ member, optional }) => optional !== true && draft[member] === undefined,
  );
  return [...(draft.name === '' ? ['name'] : []), ...missing.map((each) => each.words)];
}

/** The whole timing; error `quantity-unreadable` that names what is missing. */
export function completed(draft: TimingDraft, id: string): Result<Timing> {
  const missing = missingOf(draft);
  if (missing.length > 0) {
    return err(
      'quantity-unreadable',
      'timing',
      whenWords.draft.missing(missing.join(', ')),
      whenWords.draft.missingAdvice,
    );
  }
  const { kind, name, source } = draft;
  const figures = MEMBERS[kind].flatMap(({ member }) => (draft[member] === undefined ? [] : [[member, draft[member]]]));
  // Every member that the kind needs is there: that is what was asked just before.
  return ok({ id, kind, name, source, ...Object.fromEntries(figures) } as Timing);
}
