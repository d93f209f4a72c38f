import { useMemo, useState } from 'react';
import { type IntakeRow, ROW_KINDS, type RowKind } from '../../../core/intake/index.ts';
import { formatNumber } from '../../format/index.ts';
import type { GroundImport } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { IssueList, VirtualList } from '../../ui/index.ts';
import { KIND_WORDS } from './words.ts';
import { Working } from './working.tsx';

const ROW_PX = 46;
type Listed = IntakeRow & { readonly id: string };

/** Step three: every record with what becomes of it. */
export function ChangesStep({ file }: { readonly file: GroundImport }) {
  const { preview, progress } = file;
  const [only, setOnly] = useState<RowKind | null>(null);
  const [selectedId, select] = useState<string | null>(null);
  const rows = useMemo(
    () => (preview?.rows ?? []).map((row, index): Listed => ({ ...row, id: String(index) })),
    [preview],
  );
  const shown = useMemo(() => (only === null ? rows : rows.filter((row) => row.kind === only)), [rows, only]);
  if (preview === null) return <Working step={importWords.changesStep.looking} progress={progress} />;
  const selected = rows.find((row) => row.id === selectedId) ?? null;
  return (
    <>
      <fieldset className="import-kinds" aria-label={importWords.changesStep.show}>
        <KindButton
          words={importWords.changesStep.records}
          count={preview.counts.found}
          pressed={only === null}
          onPress={() => setOnly(null)}
        />
        {ROW_KINDS.map((kind) => (
          <KindButton
            key={kind}
            kind={kind}
            words={KIND_WORDS[kind]}
            count={preview.counts[kind]}
            pressed={only === kind}
            onPress={() => setOnly(kind)}
          />
        ))}
      </fieldset>
      <div className="import-rows">
        {shown.length === 0 ? (
          <p className="quiet">{importWords.changesStep.noRecordIs(only === null ? 'there' : KIND_WORDS[only])}</p>
        ) : (
          <VirtualList
            label={importWords.changesStep.recordsLabel}
            items={shown}
            rowPx={ROW_PX}
            selectedId={selectedId}
            onSelect={select}
            onOpen={select}
          >
            {(row) => <RecordRow row={row} />}
          </VirtualList>
        )}
      </div>
      {selected !== null && <RecordDetail row={selected} />}
      {preview.issues.length > 0 && <IssueList issues={preview.issues} most={5} />}
    </>
  );
}

type KindButtonProps = {
  readonly kind?: RowKind;
  readonly words: string;
  readonly count: number;
  readonly pressed: boolean;
  readonly onPress: () => void;
};

function KindButton({ kind, words, count, pressed, onPress }: KindButtonProps) {
  const stop = kind === 'rejected' && count > 0 ? ' stop' : '';
  return (
    <button type="button" className={`import-kind${stop}`} aria-pressed={pressed} onClick={onPress}>
      <strong>{formatNumber(count)}</strong> {words}
    </button>
  );
}

function RecordRow({ row }: { readonly row: Listed }) {
  const doubts = row.issues.filter((each) => each.severity !== 'note').length - (row.kind === 'rejected' ? 1 : 0);
  return (
    <div className="import-row">
      <span className={`import-badge import-badge-${row.kind}`}>{KIND_WORDS[row.kind]}</span>
      <span className="row-title">{row.name === '' ? row.where : row.name}</span>
      <span className="row-note" title={row.words}>
        {row.words}
        {doubts > 0 && <span className="caution"> {importWords.changesStep.toCheck(doubts)}</span>}
      </span>
    </div>
  );
}

function RecordDetail({ row }: { readonly row: Listed }) {
  const more = row.issues.filter((each) => each.message !== row.words);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="import-detail" aria-label={importWords.changesStep.selectedLabel} tabIndex={0}>
      <p>
        <strong>{row.name === '' ? importWords.changesStep.record : row.name}</strong>{' '}
        <span className="quiet">{row.where}</span>
      </p>
      <p>
        {KIND_WORDS[row.kind]}: {row.words}
      </p>
      {more.length > 0 && <IssueList issues={more} most={20} />}
    </section>
  );
}
