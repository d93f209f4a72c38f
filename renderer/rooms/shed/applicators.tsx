import type { Applicator } from '../../../core/book/index.ts';
import { type Column, withMember, yesNoOf } from './column.tsx';
import type { ShelfPlan } from './shelf.ts';

const columns: readonly Column<Applicator>[] = [
  { kind: 'text', label: 'name', inTable: true, get: (a) => a.name, set: (a, name) => ({ ...a, name }) },
  { kind: 'text', label: 'licence', inTable: true, get: (a) => a.licence, set: (a, licence) => ({ ...a, licence }) },
  {
    kind: 'date',
    label: 'holds until',
    inTable: true,
    get: (a) => a.expires ?? null,
    set: (a, expires) => ({ ...a, expires }),
    unset: ({ expires: _, ...applicator }) => applicator,
  },
  yesNoOf<Applicator>(
    'certified',
    (a) => a.certified,
    (a, value) => withMember(a, 'certified', value),
  ),
  {
    kind: 'shown',
    label: 'rigs',
    inTable: true,
    show: ({ rigIds = [] }, book) => {
      const names = rigIds.map((id) => book.rigs.find((rig) => rig.id === id)?.name ?? id);
      return names.length === 0 ? <span className="quiet">none</span> : names.join(', ');
    },
  },
  {
    kind: 'several',
    label: 'rigs',
    options: (book) => book.rigs.map((rig) => ({ value: rig.id, words: rig.name })),
    get: (a) => a.rigIds ?? [],
    set: (a, rigIds) => ({ ...a, rigIds }),
  },
  { kind: 'text', label: 'notes', get: (a) => a.note, set: (a, note) => ({ ...a, note }) },
];

export const applicatorShelf: ShelfPlan<'applicators'> = {
  shelf: 'applicators',
  title: 'Applicators',
  one: 'applicator',
  about:
    'Who may apply: name, licence number, the last day on which it holds, whether the person is certified, and the rigs that are theirs.',
  columns,
  parts: [],
  create: (_book, id) => ({ id, name: 'New applicator', licence: '', rigIds: [], note: '' }),
};
