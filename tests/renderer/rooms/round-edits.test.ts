import { expect, test, vi } from 'vitest';
import { emptyBook } from '../../../core/book/index.ts';

vi.mock('lucide-react', () => ({}));
vi.mock('../../../renderer/map/index.ts', () => ({ MapPanel: () => null }));
const { withMember } = await import('../../../renderer/rooms/round/index.ts');
const { newRound, whyNoRound } = await import('../../../renderer/stores/index.ts');

test('members are put in once, taken out, and keep their order', () => {
  expect(withMember(['a', 'b'], 'c', true)).toEqual(['a', 'b', 'c']);
  expect(withMember(['a', 'b'], 'a', true)).toEqual(['a', 'b']);
  expect(withMember(['a', 'b', 'c'], 'b', false)).toEqual(['a', 'c']);
});

test('a round needs a treatment and a rig', () => {
  const book = emptyBook('b', 'Book');
  expect(whyNoRound(book)).toBe('Add a treatment in the shed first');
  const treatment = {
    kind: 'aerate',
    id: 't',
    name: 'T',
    coverage: { kind: 'whole' },
    flagFirst: [],
    flagMin: 0,
    passes: 1,
  } as const;
  expect(whyNoRound({ ...book, treatments: [treatment] })).toBe('Add a rig in the shed first');
  expect(newRound({ ...book, treatments: [treatment] }, 'round-1', '2027-03-19')).toMatchObject({
    treatmentIds: ['t'],
    dates: ['2027-03-22'],
    propertyIds: 'all',
  });
});
