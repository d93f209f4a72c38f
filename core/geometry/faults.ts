import type { Severity } from '../base/index.ts';
import type { Position } from '../book/index.ts';

/** What is odd about an outline; documented in docs/cli.md. */
export type GeometryFaultCode =
  | 'geometry-invalid'
  | 'geometry-not-lonlat'
  | 'geometry-too-large'
  | 'geometry-too-few-corners'
  | 'geometry-zero-width'
  | 'geometry-self-crossing'
  | 'geometry-hairline-crossing'
  | 'geometry-not-closed'
  | 'geometry-repeated-corner'
  | 'part-ignored'
  | 'hole-ignored'
  | 'hole-outside';

/**
 * Something odd about an outline. An `error` keeps the outline from being used: it is either refused (no area at all) or,
 * for a crossing, measured but not planned.
 */
export type GeometryFault = {
  readonly code: GeometryFaultCode;
  readonly severity: Severity;
  /** What is wrong, where, and what to do about it. */
  readonly message: string;
  /** The place on the ground, where there is one. */
  readonly at?: Position;
};

/** A position in words, to about 0.1 m. */
export function placeText([longitude, latitude]: Position): string {
  return `longitude ${longitude.toFixed(6)}, latitude ${latitude.toFixed(6)}`;
}

export function fault(code: GeometryFaultCode, severity: Severity, message: string, at?: Position): GeometryFault {
  return at === undefined ? { code, severity, message } : { code, severity, message, at };
}

export function invalidFault(detail: string): GeometryFault {
  return fault('geometry-invalid', 'error', `${detail} Draw the outline again or export it once more.`);
}

export function tooFewCornersFault(at: Position): GeometryFault {
  const place = placeText(at);
  return fault(
    'geometry-too-few-corners',
    'error',
    `The outline has fewer than three different corners (at ${place}). Draw it again with at least three.`,
    at,
  );
}

export function zeroWidthFault(at: Position): GeometryFault {
  const place = placeText(at);
  return fault(
    'geometry-zero-width',
    'error',
    `The outline has no width: it runs out and back along one line (at ${place}). Draw it round the turf.`,
    at,
  );
}

export function crossingFault(at: Position, count: number): GeometryFault {
  const more = count > 1 ? ` and ${count - 1} more` : '';
  return fault(
    'geometry-self-crossing',
    'error',
    `The outline crosses or retraces itself at ${placeText(at)}${more}. It is measured as everything it goes round, ` +
      'but stays out of plans until it is repaired: move the corner, or accept the offered repair.',
    at,
  );
}

export function hairlineFault(at: Position): GeometryFault {
  return fault(
    'geometry-hairline-crossing',
    'note',
    `The outline crosses itself by less than a hand's breadth at ${placeText(at)}; the area is not affected.`,
    at,
  );
}

/** A wider gap than this may be a side that was never drawn, and not only a first corner left unrepeated, m. A bound of our own. */
const WIDE_GAP_M = 1;

/** A warning where the gap is wide enough to change the area; a note where it is not. */
export function notClosedFault(at: Position, gapMetres: number): GeometryFault {
  const wide = gapMetres > WIDE_GAP_M;
  const remedy = wide ? '. Check that side, and add the corners that are missing.' : '.';
  return fault(
    'geometry-not-closed',
    wide ? 'warning' : 'note',
    `The outline ends ${gapMetres.toFixed(1)} m from where it starts (${placeText(at)}); it was closed with a straight side${remedy}`,
    at,
  );
}

export function repeatedCornerFault(count: number, at: Position): GeometryFault {
  const corners = count === 1 ? 'One corner is' : `${count} corners are`;
  return fault(
    'geometry-repeated-corner',
    'note',
    `${corners} there twice in a row, first at ${placeText(at)}; ignored.`,
    at,
  );
}

export function partIgnoredFault(cause: GeometryFault): GeometryFault {
  return fault('part-ignored', 'warning', `One part of the outline is left out. ${cause.message}`, cause.at);
}

export function holeIgnoredFault(cause: GeometryFault): GeometryFault {
  return fault('hole-ignored', 'warning', `A hole is left out. ${cause.message}`, cause.at);
}

export function holeOutsideFault(at: Position): GeometryFault {
  return fault(
    'hole-outside',
    'note',
    `A hole reaches outside its outline or over another hole near ${placeText(at)}; only what lies inside is cut, and only once.`,
    at,
  );
}
