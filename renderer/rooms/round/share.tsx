import { planWords } from '../../texts/round/index.ts';
import { isNear, isOver, shareWords } from './season-words.ts';

/** A share of a limit: a bar, the figure, and a word where it is over. */
export function Share({ share }: { readonly share: number }) {
  if (share === 0) return <span className="quiet">–</span>;
  const over = isOver(share);
  return (
    <span className={`share${over ? ' share-over stop' : isNear(share) ? ' share-near caution' : ''}`}>
      <span className="share-bar" aria-hidden="true">
        <span className="share-fill" style={{ width: `${Math.min(100, share * 100)}%` }} />
      </span>
      <span>
        {over && planWords.figures.over}
        {shareWords(share)}
      </span>
    </span>
  );
}
