import { TriangleAlert } from 'lucide-react';
import { useMemo } from 'react';
import { commandNamed, runCommand } from '../commands/index.ts';
import type { Formatter } from '../format/index.ts';
import { SHEET_COUNT } from '../rooms/paper/index.ts';
import {
  goTo,
  type RoomSummary,
  roomSummaries,
  useBook,
  useChecks,
  useCurrentDay,
  useCurrentPlan,
  useCurrentRound,
  useFormat,
  useMeasures,
  usePlanStale,
  usePlans,
  useView,
} from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';
import { MainMenu } from './main-menu.tsx';

/** The pipeline: five rooms, each with its live result and what needs attention. */
export function Header() {
  const room = useView((state) => state.room);
  const summaries = useSummaries();
  return (
    <header className="header">
      <div className="header-book">
        <MainMenu />
        <BookName />
      </div>
      <nav className="pipeline" aria-label={appWords.header.rooms}>
        <ol>
          {summaries.map((summary) => (
            <PipelineStep key={summary.room} summary={summary} active={summary.room === room} />
          ))}
        </ol>
      </nav>
    </header>
  );
}

function useSummaries(): readonly RoomSummary[] {
  const open = useBook((state) => state.open);
  const measured = useMeasures();
  const issues = useChecks((state) => state.issues);
  const round = useCurrentRound();
  const known = useCurrentPlan();
  const stale = usePlanStale();
  const job = usePlans((state) => state.job);
  const day = useCurrentDay();
  const words = useFormat();
  return useMemo(() => {
    if (open === null) return [];
    const { book } = open;
    const sheets = known === null ? 0 : SHEET_COUNT;
    return roomSummaries({ book, issues, measured, round, known, stale, job, day, sheets, words });
  }, [open, issues, measured, round, known, stale, job, day, words]);
}

function BookName() {
  const open = useBook((state) => state.open);
  const save = useBook((state) => state.save);
  const words = useFormat();
  if (open === null) return null;
  return (
    <div className="book-name">
      <span className="book-title" title={`${open.book.name}, ${open.fileName}`}>
        {open.book.name}
      </span>
      {save.kind === 'failed' ? (
        <button type="button" className="save-state save-failed" onClick={() => runCommand(commandNamed('book.retry'))}>
          {appWords.header.notSaved}
        </button>
      ) : (
        <span className="save-state">
          {open.book.invented && appWords.header.invented}
          {open.readOnlyBecause !== null && <strong title={open.readOnlyBecause}>{appWords.header.readOnly}</strong>}
          {open.readOnlyBecause === null && save.kind === 'saving' && appWords.header.saving}
          {open.readOnlyBecause === null && save.kind === 'saved' && savedWords(open.savedAt, words)}
        </span>
      )}
    </div>
  );
}

function savedWords(savedAt: string | null, words: Formatter): string {
  return savedAt === null ? 'saved' : appWords.header.saved(words.timeOf(savedAt));
}

function PipelineStep({ summary, active }: { readonly summary: RoomSummary; readonly active: boolean }) {
  const { room, title, result, attention } = summary;
  return (
    <li className={`step${active ? ' step-active' : ''}`}>
      <button type="button" aria-current={active ? 'page' : undefined} onClick={() => goTo(room)}>
        <span className="step-title">{title}</span>
        {attention.count > 0 && (
          <span className={`step-attention ${attention.stops ? 'stop' : 'caution'}`}>
            <TriangleAlert size={12} aria-hidden="true" />
            {attention.count}
            <span className="step-to-check"> {appWords.header.toCheck}</span>
            <span className="only-spoken">{appWords.header.thingsToCheck(attention.count)}</span>
          </span>
        )}
        <span className="step-result">{result}</span>
      </button>
    </li>
  );
}
