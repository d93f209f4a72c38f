import type { Position } from '../../core/book/index.ts';
import { lineLengthMetres, polygonsOf } from '../../core/geometry/index.ts';
import { applyDraft, type Draft, draftOutline, isOutline, openRing, outlineFigures } from '../../core/sketch/index.ts';
import { METRES_PER_FOOT } from '../../core/units/index.ts';
import type { Formatter } from '../format/index.ts';
import { draftsWords } from '../texts/stores/index.ts';

/** What is shown of a draft while it is drawn. */
export type DraftFigures = {
  /** Net of the outline's holes, ft2; null where there is no ground yet. */
  readonly areaSqFt: number | null;
  readonly likelyErrorSqFt: number | null;
  readonly perimeterFt: number;
  readonly lastEdgeFt: number | null;
};

/** Figures of a draft as it stands, or with its corners as a drag would leave them. */
export function draftFigures(draft: Draft, corners?: readonly Position[]): DraftFigures {
  const shape = corners ?? draftOutline(draft);
  const closed = isOutline(draft.purpose) && shape.length > 2;
  const figures = outlineFigures(shape, closed, draft.outlineErrorFt);
  const lastEdgeFt = corners === undefined ? lastEdge(draft) : figures.lastEdgeFt;
  const { perimeterFt } = figures;
  if (!closed || figures.areaSqFt === null) {
    return { areaSqFt: null, likelyErrorSqFt: figures.likelyErrorSqFt, perimeterFt, lastEdgeFt };
  }
  const { areaSqFt, edgeFt } = withOtherRings(draft, figures.areaSqFt, perimeterFt);
  const likelyErrorSqFt = draft.outlineErrorFt === undefined ? null : draft.outlineErrorFt * edgeFt;
  return { areaSqFt, likelyErrorSqFt, perimeterFt, lastEdgeFt };
}

/** The side drawn last, between the corners that were set and not those of a circle made from them. */
function lastEdge({ corners }: Draft): number | null {
  return corners.length < 2 ? null : lineLengthMetres(corners.slice(-2)) / METRES_PER_FOOT;
}

/** The draft with one corner more. */
export function draftWith(draft: Draft, at: Position): Draft {
  return applyDraft(draft, { kind: 'add', at });
}

/** The ring that is edited takes from, or adds to, what the other rings of the outline leave; all their edges count. */
function withOtherRings(
  { base }: Draft,
  ringSqFt: number,
  ringFt: number,
): { readonly areaSqFt: number; readonly edgeFt: number } {
  let [areaSqFt, edgeFt] = [0, 0];
  for (const [polygon, rings] of (base === undefined ? [] : polygonsOf(base.geometry)).entries()) {
    for (const [ring, corners] of rings.entries()) {
      const own = polygon === base?.place.polygon && ring === base.place.ring;
      const other = own ? null : outlineFigures(openRing(corners), true);
      areaSqFt += (ring === 0 ? 1 : -1) * (other === null ? ringSqFt : (other.areaSqFt ?? 0));
      edgeFt += other === null ? ringFt : other.perimeterFt;
    }
  }
  return base === undefined ? { areaSqFt: ringSqFt, edgeFt: ringFt } : { areaSqFt, edgeFt };
}

/** Lines of text for the plate beside the pointer. */
export function figureLines(figures: DraftFigures, words: Formatter): readonly string[] {
  const { areaSqFt, lastEdgeFt, perimeterFt } = figures;
  return [
    ...(lastEdgeFt === null ? [] : [draftsWords.draftFigures.side(words.length(lastEdgeFt))]),
    ...(areaSqFt === null ? [] : [areaWords(figures, words)]),
    ...(lastEdgeFt === null ? [] : [draftsWords.draftFigures.round(words.length(perimeterFt))]),
  ];
}

export function areaWords({ areaSqFt, likelyErrorSqFt }: DraftFigures, words: Formatter): string {
  if (areaSqFt === null) return draftsWords.draftFigures.noAreaYet;
  return `${words.area(areaSqFt)}${likelyErrorSqFt === null ? '' : ` ± ${words.area(likelyErrorSqFt)}`}`;
}
