import { TriangleAlert } from 'lucide-react';
import { MISSED } from '../../../../core/round/timing/index.ts';
import { counted } from '../../../format/index.ts';
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
    ...(missed > 0 ? [`${counted(missed, 'lawn')} will miss the last useful day`] : []),
    ...(early > 0 ? [`${counted(early, 'lawn')} would be too early`] : []),
  ];
  return (
    <p className="caution when-note">
      <TriangleAlert size={14} aria-hidden="true" /> By {when.timing.name}, {parts.join(', and ')}: see When.
    </p>
  );
}
