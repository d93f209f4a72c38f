import type { AppError } from '../../core/base/index.ts';

/** Stands for figures while the passes they need are reckoned, or says why they cannot be. */
export function Reckoning({ fault }: { readonly fault: AppError | null }) {
  if (fault === null) return <p className="quiet small">Reckoning the passes…</p>;
  return (
    <p className="caution small">
      {fault.detail} {fault.hint}
    </p>
  );
}
