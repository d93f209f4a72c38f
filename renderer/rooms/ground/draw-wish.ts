import { useMemo } from 'react';
import type { Position } from '../../../core/book/index.ts';
import { polygonsOf } from '../../../core/geometry/index.ts';
import {
  copyShape,
  cornersAt,
  crossingsOf,
  type Draft,
  draftOutline,
  FIRST_SHELL,
  isOutline,
  isPlace,
  openRing,
  polygonOf,
} from '../../../core/sketch/index.ts';
import type { Formatter } from '../../format/index.ts';
import { type DrawTone, type DrawWish, partKey } from '../../map/index.ts';
import { type Carry, draftFigures, draftWith, figureLines, useCarry, useDraft, useFormat } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';

const CHOOSE: DrawWish = { kind: 'choose' };

const PLACE_WORDS = {
  gate: drawWords.wish.gateHere,
  parking: drawWords.wish.parkingHere,
  'hose-stand': drawWords.wish.hoseStandHere,
} as const;

/** What the map is to draw now. */
export function useDrawWish(): DrawWish {
  const draft = useDraft((state) => state.draft);
  const marked = useDraft((state) => state.marked);
  const carry = useCarry((state) => state.carry);
  const words = useFormat();
  return useMemo(() => {
    if (draft !== null) return wishOf(draft, marked, words);
    return carry === null ? CHOOSE : carryWish(carry);
  }, [draft, marked, carry, words]);
}

/** What is carried is shown at the pointer, its largest shell alone. */
function carryWish({ anchor, shells }: Carry): DrawWish {
  const shell = shells[0] ?? [];
  return {
    kind: 'outline',
    tone: 'zone',
    mode: 'drawing',
    closes: true,
    corners: [],
    shape: [],
    others: [],
    crossings: [],
    crossingsWith: () => [],
    marked: null,
    preview: (at) => {
      const moved = copyShape(polygonOf(shell), anchor, at);
      return moved.ok ? (cornersAt(moved.value, FIRST_SHELL) ?? []) : [];
    },
    readout: () => [],
  };
}

export function wishOf(draft: Draft, marked: number | null, words: Formatter): DrawWish {
  const { purpose, corners, base } = draft;
  if (isPlace(purpose)) {
    const place = purpose.kind as keyof typeof PLACE_WORDS;
    return { kind: 'place', words: PLACE_WORDS[place], at: corners.at(-1) ?? null };
  }
  const shape = draftOutline(draft);
  const editing = base !== undefined;
  return {
    kind: 'outline',
    tone: base !== undefined && base.place.ring > 0 ? 'hole' : (purpose.kind as DrawTone),
    mode: editing ? 'editing' : 'drawing',
    closes: isOutline(purpose),
    corners,
    shape,
    others: otherRings(draft),
    crossings: crossingsOf(shape, editing || shape !== corners).map(({ at }) => at),
    marked,
    preview: (at) => draftOutline(draftWith(draft, at)),
    crossingsWith: (previewed) => crossingsOf(previewed, editing || draft.tool !== 'polygon').map(({ at }) => at),
    readout: (at) => {
      const dragging = useDraft.getState().dragging ?? undefined;
      return figureLines(at === null ? draftFigures(draft, dragging) : draftFigures(draftWith(draft, at)), words);
    },
  };
}

function otherRings({ base }: Draft): readonly (readonly Position[])[] {
  if (base === undefined) return [];
  return polygonsOf(base.geometry).flatMap((rings, polygon) =>
    rings.filter((_, ring) => polygon !== base.place.polygon || ring !== base.place.ring).map(openRing),
  );
}

/** The part of the book that a draft is changing, which the map then leaves to the drawing; null for something new. */
export function editedPart(draft: Draft | null): { readonly propertyId: string; readonly key: string } | null {
  if (draft?.base === undefined) return null;
  const { purpose } = draft;
  if (purpose.kind === 'zone') {
    return { propertyId: purpose.propertyId, key: partKey({ kind: 'zone', partId: purpose.zoneId }) };
  }
  if (purpose.kind !== 'exclusion') return null;
  return { propertyId: purpose.propertyId, key: partKey({ kind: 'exclusion', partId: purpose.exclusionId }) };
}
