import { closeWalk, type Draft, isOutline, isWalkedRound } from '../../../core/sketch/index.ts';
import { draftStep, say, useFormat } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { Button } from '../../ui/index.ts';

/** Where a walk ends beside its start: by how much, and a way to share that out over all its sides. */
export function VertexClose({ draft }: { readonly draft: Draft }) {
  const words = useFormat();
  const { corners, purpose } = draft;
  if (!isOutline(purpose) || !isWalkedRound(corners)) return null;
  const closed = closeWalk(corners);
  const gap = words.length(closed.closingErrorFt);
  const close = () => {
    draftStep({ kind: 'replace', corners: closed.corners });
    say(drawWords.vertexClose.closedSpoken(gap));
  };
  return (
    <div className="vertex-start">
      <span className="small quiet">{drawWords.vertexClose.gap(gap)}</span>
      <Button onPress={close}>{drawWords.vertexClose.close}</Button>
    </div>
  );
}
