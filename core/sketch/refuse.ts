import { type Err, err } from '../base/index.ts';
import type { GeometryFault } from '../geometry/index.ts';

/** The refusal of an edit of an outline. */
export function refuse(detail: string, hint: string): Err {
  return err('geometry-invalid', 'outline', detail, hint);
}

/** The refusal of an edit that would change nothing. */
export function needless(detail: string, hint: string): Err {
  return err('nothing-to-do', 'outline', detail, hint);
}

/** A fault of an outline as a refusal; the fault's message says where and what to do. */
export function refuseFault({ code, message, at }: GeometryFault, hint = 'Draw the outline again.'): Err {
  if (code === 'geometry-self-crossing' && at !== undefined) {
    const place = `longitude ${at[0].toFixed(6)}, latitude ${at[1].toFixed(6)}`;
    return err(
      'geometry-invalid',
      'outline',
      `Sides of the outline cross at ${place}.`,
      'Move a corner so that they do not.',
    );
  }
  const known = code === 'geometry-not-lonlat' || code === 'geometry-too-large' ? code : 'geometry-invalid';
  return err(known, 'outline', message, hint);
}
