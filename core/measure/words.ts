import { type Issue, issue } from '../base/index.ts';
import { type GeometryFault, placeText } from '../geometry/index.ts';
import { formatArea, formatNumber, quantity, squareMetresToSquareFeet } from '../units/index.ts';
import type { CutZone } from './cut.ts';

/** Ground below this is rounding along shared sides, not an overlap or a lost piece, m2. */
const NOTICEABLE_SQ_M = 0.01;

export function faultIssue(fault: GeometryFault, where: string): Issue {
  return issue(fault.severity, fault.code, where, fault.message);
}

/** A fault of an exclusion: a crossing is only worth a warning there, since its filling is cut all the same. */
export function exclusionFaultIssue(fault: GeometryFault, where: string): Issue {
  if (fault.code === 'geometry-self-crossing') {
    const place = fault.at === undefined ? '' : ` near ${placeText(fault.at)}`;
    const message = `The exclusion crosses or retraces itself${place}; everything it goes round is cut. Repair it.`;
    return issue('warning', fault.code, where, message);
  }
  if (fault.code === 'geometry-zero-width' || fault.code === 'geometry-too-few-corners') {
    return issue('warning', fault.code, where, `Nothing is cut for this exclusion. ${fault.message}`);
  }
  return faultIssue(fault, where);
}

/** What cutting did to a zone that its reader should know. */
export function cutIssues(cut: CutZone, where: string): readonly Issue[] {
  const issues: Issue[] = [];
  if (cut.overlapSqM > NOTICEABLE_SQ_M) {
    const message = `${areaText(cut.overlapSqM)} of the zone already belong to an earlier zone and are counted there only.`;
    issues.push(issue('note', 'zone-overlap', where, message));
  }
  if (cut.droppedSqM > NOTICEABLE_SQ_M) {
    const pieces = cut.droppedParts === 1 ? 'One piece' : `${cut.droppedParts} pieces`;
    const message = `${pieces} of turf under 1 m2 (11 ft2) left out, together ${areaText(cut.droppedSqM)}.`;
    issues.push(issue('note', 'small-part-dropped', where, message));
  }
  if (cut.treatableSqM === 0) {
    const message =
      'Nothing is left to treat: exclusions or earlier zones cover the zone. Check them, or remove the zone.';
    issues.push(issue('warning', 'zone-without-turf', where, message));
  }
  return issues;
}

export function farZoneFault(firstName: string, metres: number): GeometryFault {
  return {
    code: 'geometry-too-large',
    severity: 'error',
    message:
      `The zone lies ${formatNumber(metres / 1000, 1)} km from the first zone${firstName === '' ? '' : ` (${firstName})`} of its ` +
      'property; the limit is 10 km. Give it a property of its own, or correct its coordinates.',
  };
}

export function farExclusionIssue(where: string): Issue {
  const message = 'The exclusion touches no zone of its property, so nothing is cut. Move it or remove it.';
  return issue('note', 'exclusion-outside', where, message);
}

export function unusedExclusionIssue(where: string): Issue {
  const message = 'The areas are stated, not drawn, so the exclusion is not taken off them.';
  return issue('note', 'exclusion-not-used', where, message);
}

export function unknownExclusionIssue(where: string): Issue {
  const message =
    'An exclusion of the property cannot be read, so the area is too large by an unknown amount; the zone stays out of ' +
    'plans until the exclusion is put right.';
  return issue('error', 'exclusion-unknown', where, message);
}

export function noZonesIssue(where: string): Issue {
  return issue(
    'warning',
    'property-without-zones',
    where,
    'The property has no zone. Draw one, or enter a stated area.',
  );
}

function areaText(squareMetres: number): string {
  return formatArea(squareMetresToSquareFeet(quantity<'m2'>(squareMetres)), 'us');
}
