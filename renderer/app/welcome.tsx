import { FilePlus2, FolderOpen } from 'lucide-react';
import { useEffect, useState } from 'react';
import type { RecentBook, SampleInfo } from '../../core/contract/index.ts';
import { COMMANDS } from '../commands/index.ts';
import { counted } from '../format/index.ts';
import { askHost, createBook, openBookFile, openSample, openToken } from '../stores/index.ts';
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
  return (
    <div className="welcome">
      <div className="welcome-menu">
        <MainMenu commands={COMMANDS} />
      </div>
      <main className="welcome-sheet">
        <header>
          <h1>Swardway</h1>
          <p className="welcome-line">
            Real lawns in, a day that fits out: turf measured, machines matched to gates, every fill and refill placed.
          </p>
          <Pipeline />
        </header>
        <div className="welcome-columns">
          <section>
            <h2>Look at an invented book</h2>
            <p className="quiet small">Places, people, products and rates are made up and not for use.</p>
            <ul className="start-list">
              {starts.samples.map((sample) => (
                <li key={sample.sampleId}>
                  <SampleButton sample={sample} />
                </li>
              ))}
            </ul>
          </section>
          <section>
            <h2>Your own</h2>
            <NewBook />
            <Button onPress={() => openBookFile().catch(() => undefined)}>
              <FolderOpen size={16} aria-hidden="true" /> Open a book file…
            </Button>
            {starts.recent.length > 0 && <Recent books={starts.recent} />}
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
        <b>Ground</b> what there is to treat
      </li>
      <li>
        <b>Shed</b> what you treat it with
      </li>
      <li>
        <b>Round</b> what has to be done by when
      </li>
      <li>
        <b>Day</b> who goes where, and what runs out
      </li>
      <li>
        <b>Paper</b> what the crew takes along
      </li>
    </ol>
  );
}

function SampleButton({ sample }: { readonly sample: SampleInfo }) {
  return (
    <button type="button" className="start" onClick={() => openSample(sample.sampleId).catch(() => undefined)}>
      <span className="start-name">{sample.name}</span>
      <span className="start-note">{sample.note}</span>
      <span className="start-count">
        {counted(sample.properties, 'lawn')} · {counted(sample.rigs, 'rig')}
      </span>
    </button>
  );
}

function NewBook() {
  const [name, setName] = useState('');
  return (
    <form
      className="new-book"
      onSubmit={(event) => {
        event.preventDefault();
        createBook(name.trim() === '' ? 'New book' : name.trim()).catch(() => undefined);
      }}
    >
      <input
        className="input"
        aria-label="Name of the new book"
        placeholder="Name of the new book"
        maxLength={200}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <button type="submit" className="button button-main">
        <FilePlus2 size={16} aria-hidden="true" /> Start an empty book
      </button>
    </form>
  );
}

function Recent({ books }: { readonly books: readonly RecentBook[] }) {
  return (
    <section>
      <h3>Opened before</h3>
      <ul className="start-list">
        {books.map((book) => (
          <li key={book.token}>
            <button
              type="button"
              className="start start-recent"
              aria-disabled={book.missing || undefined}
              title={book.missing ? 'The file is no longer there' : undefined}
              onClick={() => !book.missing && openToken(book.token).catch(() => undefined)}
            >
              <span className="start-name">{book.name}</span>
              <span className="start-note">
                {book.missing ? 'missing: ' : ''}
                {book.fileName}, {book.place}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
