import { FileInput, FilePlus2, FolderOpen, Play } from 'lucide-react';
import { type ReactNode, useEffect, useId, useState } from 'react';
import type { RecentBook, SampleInfo } from '../../core/contract/index.ts';
import { askHost, createBook, importList, openBookFile, openSample, openToken } from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';
import { commonWords } from '../texts/index.ts';
import { lookAround } from '../tour/index.ts';
import { Button } from '../ui/index.ts';
import { MainMenu } from './main-menu.tsx';

type Starts = { readonly samples: readonly SampleInfo[]; readonly recent: readonly RecentBook[] };

/** What is shown while no book is open. */
export function Welcome() {
  const [starts, setStarts] = useState<Starts>({ samples: [], recent: [] });
  useEffect(() => {
    let here = true;
    loadStarts().then(
      (loaded) => here && setStarts(loaded),
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, []);
  const [first, ...others] = starts.samples;
  return (
    <div className="welcome">
      <div className="welcome-menu">
        <MainMenu />
      </div>
      <main className="welcome-sheet">
        <header>
          <h1>{commonWords.program}</h1>
          <p className="welcome-line">{appWords.welcome.claim}</p>
          <Pipeline />
        </header>
        <div className="ways">
          <LookAtSample sample={first} />
          <ImportList />
          <StartEmpty />
        </div>
        <div className="welcome-columns">
          <section>
            <h2>{appWords.welcome.openedBefore}</h2>
            <Recent books={starts.recent} />
            <Button onPress={() => openBookFile().catch(() => undefined)}>
              <FolderOpen size={16} aria-hidden="true" /> {appWords.welcome.openBookFile}
            </Button>
          </section>
          <section>
            <h2>{appWords.welcome.moreTitle}</h2>
            <p className="quiet small">{appWords.welcome.sampleNote}</p>
            <ul className="start-list">
              {others.map((sample) => (
                <li key={sample.sampleId}>
                  <SampleButton sample={sample} />
                </li>
              ))}
            </ul>
          </section>
        </div>
      </main>
    </div>
  );
}

async function loadStarts(): Promise<Starts> {
  const [samples, recent] = await Promise.all([askHost('samples.list', {}), askHost('book.recent', {})]);
  return { samples: samples ?? [], recent: recent ?? [] };
}

function Pipeline() {
  return (
    <ol className="welcome-pipeline">
      <li>
        <b>{commonWords.rooms.ground}</b> {appWords.welcome.groundFor}
      </li>
      <li>
        <b>{commonWords.rooms.shed}</b> {appWords.welcome.shedFor}
      </li>
      <li>
        <b>{commonWords.rooms.round}</b> {appWords.welcome.roundFor}
      </li>
      <li>
        <b>{commonWords.rooms.day}</b> {appWords.welcome.dayFor}
      </li>
      <li>
        <b>{commonWords.rooms.paper}</b> {appWords.welcome.paperFor}
      </li>
    </ol>
  );
}

function sampleCounts({ properties, rigs }: SampleInfo): string {
  return `${commonWords.lawns(properties)} · ${appWords.welcome.rigs(rigs)}`;
}

function SampleButton({ sample }: { readonly sample: SampleInfo }) {
  return (
    <button type="button" className="start" onClick={() => openSample(sample.sampleId).catch(() => undefined)}>
      <span className="start-name">{sample.name}</span>
      <span className="start-note">{sample.note}</span>
      <span className="start-count">{sampleCounts(sample)}</span>
    </button>
  );
}

type WayProps = { readonly title: string; readonly children: ReactNode };

/** One of the ways to begin. */
function Way({ title, children }: WayProps) {
  const id = useId();
  return (
    <section className="way" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}

function LookAtSample({ sample }: { readonly sample: SampleInfo | undefined }) {
  return (
    <Way title={appWords.welcome.lookTitle}>
      <p>{appWords.welcome.lookAbout}</p>
      <Button
        look="main"
        whyNot={sample === undefined ? appWords.welcome.noSample : null}
        onPress={() => sample !== undefined && lookAround(sample.sampleId).catch(() => undefined)}
      >
        <Play size={15} aria-hidden="true" /> {appWords.welcome.look}
      </Button>
      <p className="quiet small">
        {sample === undefined ? '' : appWords.welcome.sampleLine(sample.name, sampleCounts(sample))}
      </p>
    </Way>
  );
}

function ImportList() {
  return (
    <Way title={appWords.welcome.listTitle}>
      <p>{appWords.welcome.listAbout}</p>
      <Button look="main" onPress={() => importList().catch(() => undefined)}>
        <FileInput size={15} aria-hidden="true" /> {appWords.welcome.importList}
      </Button>
      <p className="quiet small">{appWords.welcome.listKinds}</p>
    </Way>
  );
}

function StartEmpty() {
  const [name, setName] = useState('');
  return (
    <Way title={appWords.welcome.emptyTitle}>
      <p>{appWords.welcome.emptyAbout}</p>
      <form
        className="new-book"
        onSubmit={(event) => {
          event.preventDefault();
          createBook(name.trim() === '' ? appWords.welcome.newBook : name.trim()).catch(() => undefined);
        }}
      >
        <input
          className="input"
          aria-label={appWords.welcome.nameOfNew}
          placeholder={appWords.welcome.nameOfNew}
          maxLength={200}
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
        <button type="submit" className="button button-main">
          <FilePlus2 size={16} aria-hidden="true" /> {appWords.welcome.startEmpty}
        </button>
      </form>
      <p className="quiet small">{appWords.welcome.emptyNote}</p>
    </Way>
  );
}

function Recent({ books }: { readonly books: readonly RecentBook[] }) {
  if (books.length === 0) return <p className="quiet small">{appWords.welcome.noneBefore}</p>;
  return (
    <ul className="start-list">
      {books.map((book) => (
        <li key={book.token}>
          <button
            type="button"
            className="start start-recent"
            aria-disabled={book.missing || undefined}
            title={book.missing ? appWords.welcome.goneNote : undefined}
            onClick={() => !book.missing && openToken(book.token).catch(() => undefined)}
          >
            <span className="start-name">{book.name}</span>
            <span className="start-note">
              {book.missing ? appWords.welcome.missing : ''}
              {book.fileName}, {book.place}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
