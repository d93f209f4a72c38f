import type { Applicator } from '../../../core/book/index.ts';
import { commonWords } from '../../texts/index.ts';
import { rigsWords } from '../../texts/shed/index.ts';
import { type Column, withMember, yesNoOf } from './column.tsx';
import type { ShelfPlan } from './shelf.ts';

const columns: readonly Column<Applicator>[] = [
  {
    kind: 'text',
    label: rigsWords.applicators.name,
    inTable: true,
    get: (a) => a.name,
    set: (a, name) => ({ ...a, name }),
  },
  {
    kind: 'text',
    label: rigsWords.applicators.licence,
    inTable: true,
    get: (a) => a.licence,
    set: (a, licence) => ({ ...a, licence }),
  },
  {
    kind: 'date',
    label: rigsWords.applicators.holdsUntil,
    inTable: true,
    get: (a) => a.expires ?? null,
    set: (a, expires) => ({ ...a, expires }),
    unset: ({ expires: _, ...applicator }) => applicator,
  },
  yesNoOf<Applicator>(
    rigsWords.applicators.certified,
    (a) => a.certified,
    (a, value) => withMember(a, 'certified', value),
  ),
  {
    kind: 'shown',
    label: rigsWords.applicators.rigs,
    inTable: true,
    show: ({ rigIds = [] }, book) => {
      const names = rigIds.map((id) => book.rigs.find((rig) => rig.id === id)?.name ?? id);
      return names.length === 0 ? <span className="quiet">{commonWords.none}</span> : names.join(', ');
    },
  },
  {
    kind: 'several',
    label: rigsWords.applicators.rigs,
    options: (book) => book.rigs.map((rig) => ({ value: rig.id, words: rig.name })),
    get: (a) => a.rigIds ?? [],
    set: (a, rigIds) => ({ ...a, rigIds }),
  },
  { kind: 'text', label: rigsWords.applicators.notes, get: (a) => a.note, set: (a, note) => ({ ...a, note }) },
];

export const applicatorShelf: ShelfPlan<'applicators'> = {
  shelf: 'applicators',
  title: rigsWords.applicators.applicators,
  one: rigsWords.applicators.applicator,
  about: rigsWords.applicators.about,
  columns,
  parts: [],
  create: (_book, id) => ({ id, name: rigsWords.applicators.newApplicator, licence: '', rigIds: [], note: '' }),
};
