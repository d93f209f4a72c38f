import { err, type Result } from '../../base/index.ts';

export type RoadFaultCode = 'format-invalid' | 'format-unknown' | 'file-too-large' | 'not-allowed' | 'cancelled';

/** Leads from the place of a fault straight out of the reader; caught in `readRoads`. */
export class RoadFault extends Error {
  readonly code: RoadFaultCode;
  readonly detail: string;
  readonly hint: string;
  constructor(code: RoadFaultCode, detail: string, hint: string) {
    super(detail);
    this.code = code;
    this.detail = detail;
    this.hint = hint;
  }
}

const AGAIN = 'The file was cut short or damaged. Download or export the extract again.';

export function damaged(what: string): RoadFault {
  return new RoadFault('format-invalid', `The extract is damaged: ${what}.`, AGAIN);
}

export function tooMuch(what: string): RoadFault {
  return new RoadFault('file-too-large', `The extract holds ${what}.`, 'Cut out a smaller region, such as one county.');
}

export function stoppedFault(): RoadFault {
  return new RoadFault('cancelled', 'Reading the roads was stopped.', 'Start it again; nothing was kept.');
}

export function refusal(fault: RoadFault, where: string): Result<never> {
  return err(fault.code, where, fault.detail, fault.hint);
}
