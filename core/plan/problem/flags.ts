import { type Issue, issue } from '../../base/index.ts';
import type { Treatment } from '../../book/index.ts';

type Flagged = Treatment['flagFirst'][number];

const WORDS: Readonly<Record<Flagged, string>> = {
  'sprinkler-heads': 'sprinkler heads',
  'shallow-lines': 'shallow lines',
  edges: 'edges',
};

/**
 * Minutes of flagging at one property before several treatments. What one treatment has flagged is not flagged again for
 * another; treatments that flag different things add up.
 */
export function flagMinutes(treatments: readonly Treatment[]): number {
  const done = new Set<Flagged | 'unnamed'>();
  let minutes = 0;
  const longestFirst = [...new Set(treatments)].sort((left, right) => right.flagMin - left.flagMin);
  for (const { flagFirst, flagMin } of longestFirst) {
    const wanted = flagFirst.length === 0 ? (['unnamed'] as const) : flagFirst;
    if (wanted.every((each) => done.has(each))) continue;
    for (const each of wanted) done.add(each);
    minutes += flagMin;
  }
  return minutes;
}

/** What has to be flagged before each treatment starts, as notes for the crew. */
export function flagNotes(treatments: readonly Treatment[]): readonly Issue[] {
  return treatments.flatMap(({ name, flagFirst, flagMin }) => {
    if (flagFirst.length === 0) return [];
    const what = flagFirst.map((each) => WORDS[each]).join(', ');
    const minutes =
      flagMin > 0 ? `${flagMin} min at each property are planned for it` : 'no minutes are entered for it';
    return [issue('note', 'flag-first', `treatment ${name}`, `Flag before work starts: ${what}; ${minutes}.`)];
  });
}
