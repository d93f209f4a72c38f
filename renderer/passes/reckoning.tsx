import type { AppError } from '../../core/base/index.ts';
import { KEPT, passesWords } from '../texts/index.ts';

/** Stands for figures while the passes they need are reckoned, or says why they cannot be. */
export function Reckoning({ fault }: { readonly fault: AppError | null }) {
  if (fault === null) return <p className="quiet small">{passesWords.panel.reckoning}</p>;
  return (
    <p className="caution small">
      {fault.detail} {KEPT[fault.code]} {fault.hint}
    </p>
  );
}
