import { type AppError, err, ok, type Result } from '../../core/base/index.ts';
import { type Book, emptyBook } from '../../core/book/index.ts';
import type { ChannelName, Host, OpenBook } from '../../core/contract/index.ts';
import { useHost } from '../../renderer/stores/index.ts';

export type Asked = { readonly name: ChannelName; readonly request: unknown };

/** A host for tests: remembers what it is asked, and answers as the test says. */
export type FakeHost = {
  readonly asked: readonly Asked[];
  readonly answer: (name: ChannelName, answer: (request: never) => Result<unknown> | Promise<Result<unknown>>) => void;
};

/** Puts a fake host behind the stores. What it is not told to answer, it answers with a failure. */
export function installFakeHost(): FakeHost {
  const asked: Asked[] = [];
  const answers = new Map<ChannelName, (request: never) => Result<unknown> | Promise<Result<unknown>>>();
  const call = async (name: ChannelName, request: unknown) => {
    asked.push({ name, request });
    const answer = answers.get(name);
    return answer === undefined ? err('internal', name, 'The test gives no answer.', '') : answer(request as never);
  };
  useHost.setState({ host: { call: call as Host['call'], on: () => () => undefined } });
  return { asked, answer: (name, answer) => answers.set(name, answer) };
}

export function openBookOf(book: Book, revision = 7): OpenBook {
  return {
    session: 's1',
    token: 'token',
    revision,
    book,
    issues: [],
    plans: [],
    draft: null,
    fileName: 'book.swardway',
    place: '~',
    savedAt: null,
    readOnlyBecause: null,
    remark: null,
  };
}

export function smallBook(): Book {
  const book = emptyBook('b1', 'Test book');
  return {
    ...book,
    properties: [
      {
        id: 'p1',
        name: 'First Lawn',
        address: '1 Made-up Street',
        parking: [-89.4, 40.03],
        noTrailer: false,
        gates: [{ id: 'g1', name: 'side gate', clearWidthIn: 36, locked: false }],
        zones: [
          {
            id: 'z',
            name: 'whole',
            shape: { kind: 'stated', areaSqFt: 8000, method: '' },
            slopeDeg: 0,
            gateIds: ['g1'],
          },
        ],
        exclusions: [],
        cautions: [],
        note: '',
      },
    ],
  };
}

/** Answers every edit with the next revision, as the real host does; refuses one made on an older revision. */
export function answerEdits(host: FakeHost, first = 7): void {
  let revision = first;
  host.answer('book.apply', ({ baseRevision }: { baseRevision: number }) => {
    if (baseRevision !== revision) return err('book-changed', 'book', 'The book was changed.', 'Read it again.');
    revision += 1;
    return ok({ revision, savedAt: '2027-03-16T10:42:00Z' });
  });
}

/** Lets everything that waits for an answer go on. */
export async function settle(): Promise<void> {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
}

export const DISK_FULL: AppError = {
  code: 'disk-full',
  where: 'book',
  detail: 'The disk is full.',
  hint: 'Make room.',
};
