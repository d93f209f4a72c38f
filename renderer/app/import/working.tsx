import { formatNumber } from '../../format/index.ts';
import type { ImportProgress } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';

type WorkingProps = { readonly step: string; readonly progress: ImportProgress | null };

/** How far a piece of work is. */
export function Working({ step, progress }: WorkingProps) {
  const words = progress?.step ?? step;
  const share = progress === null || progress.total === 0 ? null : progress.done / progress.total;
  return (
    <div className="import-working">
      <span>
        {words}
        {progress !== null && progress.total > 0 && (
          <span className="quiet">
            {' '}
            {importWords.working.progress(formatNumber(progress.done), formatNumber(progress.total))}
          </span>
        )}
      </span>
      {share === null ? (
        <progress aria-label={words} />
      ) : (
        <progress aria-label={words} max={100} value={Math.round(100 * share)} />
      )}
    </div>
  );
}
