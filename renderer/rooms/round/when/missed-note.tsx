import { TriangleAlert } from 'lucide-react';
import { MISSED } from '../../../../core/round/timing/index.ts';
import { whenWords } from '../../../texts/round/index.ts';
import { useWhen } from './use-when.ts';

/** One line for the plan of a round: how many of its lawns stand outside their window. */
export function MissedNote() {
  const when = useWhen();
  if (when === null || when.timing === null) return null;
  const lawns = when.groups.flatMap((group) => group.lawns);
  const missed = lawns.filter((each) => MISSED.includes(each.verdict)).length;
  const early = lawns.filter((each) => each.verdict === 'too-early').length;
  if (missed + early === 0) return null;
  const parts = [
    ...(missed > 0 ? [whenWords.missed.willMiss(missed)] : []),
    ...(early > 0 ? [whenWords.missed.tooEarly(early)] : []),
  ];
  return (
    <p className="caution when-note">
      <TriangleAlert size={14} aria-hidden="true" />{' '}
      {whenWords.missed.seeWhen(when.timing.name, parts.join(whenWords.missed.joined))}
    </p>
  );
}
