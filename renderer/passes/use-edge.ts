import { useMemo } from 'react';
import { edgeLengths, edgeWords } from '../../core/measure/index.ts';
import { type PassWish, useBook, useFormat } from '../stores/index.ts';
import type { Figure } from './pass-words.ts';

/** What the trim passes over a zone run along, and which side of the machine is to it; null where the zone has no outline. */
export function useEdge(wish: PassWish | null): Figure | null {
  const book = useBook((state) => state.open?.book ?? null);
  const words = useFormat();
  const property = book?.properties.find((each) => each.id === wish?.propertyId);
  const machine = book?.machines.find((each) => each.id === wish?.machineId);
  const side = machine?.heads.find((each) => each.id === wish?.headId)?.passes?.shieldedSide;
  const zoneId = wish?.zoneId ?? '';
  const edges = useMemo(() => (property === undefined ? [] : edgeLengths(property, zoneId)), [property, zoneId]);
  if (edges.length === 0) return null;
  const shield = side === undefined ? '' : `; shielded side, ${side}, to all of it`;
  return { name: 'edge', words: `${edgeWords(edges, words.length)}${shield}` };
}
