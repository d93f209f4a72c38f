import type { Position } from '../../core/book/index.ts';
import { lineLengthMetres, polygonsOf } from '../../core/geometry/index.ts';
import { applyDraft, type Draft, draftOutline, isOutline, openRing, outlineFigures } from '../../core/sketch/index.ts';
import type { Formatter } from '../format/index.ts';

/** What is shown of a draft while it is drawn. */
export type DraftFigures = {
  /** Net of the outline's holes, ft2; null where there is no ground yet. */
  readonly areaSqFt: number | null;
  readonly likelyErrorSqFt: number | null;
  readonly perimeterFt: number;
  readonly lastEdgeFt: number | null;
};

const FEET_PER_METRE = 1 / 0.3048;

/** Figures of a draft as it stands, or with its corners as a drag would leave them. */
export function draftFigures(draft: Draft, corners?: readonly Position[]): DraftFigures {
  const shape = corners ?? draftOutline(draft);
  const closed = isOutline(draft.purpose) && shape.length > 2;
  const figures = outlineFigures(shape, closed, draft.outlineErrorFt);
  const lastEdgeFt = corners === undefined ? lastEdge(draft) : figures.lastEdgeFt;
  const areaSqFt = closed && figures.areaSqFt !== null ? netOf(draft, figures.areaSqFt) : null;
  return { areaSqFt, likelyErrorSqFt: figures.likelyErrorSqFt, perimeterFt: figures.perimeterFt, lastEdgeFt };
}

/** The side drawn last, between the corners that were set and not those of a circle made from them. */
function lastEdge({ corners }: Draft): number | null {
  return corners.length < 2 ? null : lineLengthMetres(corners.slice(-2)) * FEET_PER_METRE;
}

/** The draft with one corner more. */
export function draftWith(draft: Draft, at: Position): Draft {
  return applyDraft(draft, { kind: 'add', at });
}

/** The ring that is edited takes from, or adds to, what the other rings of the outline leave. */
function netOf({ base }: Draft, ringSqFt: number): number {
  if (base === undefined) return ringSqFt;
  const { polygon, ring } = base.place;
  let net = 0;
  polygonsOf(base.geometry).forEach((rings, polygonIndex) => {
    rings.forEach((corners, ringIndex) => {
      const own = polygonIndex === polygon && ringIndex === ring;
      const area = own ? ringSqFt : (outlineFigures(openRing(corners), true).areaSqFt ?? 0);
      net += ringIndex === 0 ? area : -area;
    });
  });
  return net;
}

/** Lines of text for the plate beside the pointer. */
export function figureLines(figures: DraftFigures, words: Formatter): readonly string[] {
  const { areaSqFt, lastEdgeFt, perimeterFt } = figures;
  return [
    ...(lastEdgeFt === null ? [] : [`side ${words.length(lastEdgeFt)}`]),
    ...(areaSqFt === null ? [] : [areaWords(figures, words)]),
    ...(lastEdgeFt === null ? [] : [`round ${words.length(perimeterFt)}`]),
  ];
}

export function areaWords({ areaSqFt, likelyErrorSqFt }: DraftFigures, words: Formatter): string {
  if (areaSqFt === null) return 'no area yet';
  return `${words.area(areaSqFt)}${likelyErrorSqFt === null ? '' : ` ± ${words.area(likelyErrorSqFt)}`}`;
}
