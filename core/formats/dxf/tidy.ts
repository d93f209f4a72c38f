import { err, ok, type Result } from '../../base/index.ts';

/** A drawing reduced to what can be an outline, and what was taken away. */
export type TidyDrawing = {
  /** Blocks and entities of the types that are read, with names marked so that none can pass for a keyword. */
  readonly text: string;
  /** The header's $INSUNITS; null where it has none. */
  readonly unitCode: number | null;
  /** How many entities of the types that are not read there are, by type. */
  readonly otherTypes: ReadonlyMap<string, number>;
  /** False where the file ends before its end mark. */
  readonly isWhole: boolean;
};

/** In front of every name of the reduced text, so that a layer called BLOCK is not taken for the start of a block. */
export const NAME_MARK = '~';

/** Types that the sections are made of, and those that outlines are made of (DXF reference, group code 0). */
const STRUCTURE = ['BLOCK', 'ENDBLK', 'SEQEND', 'VERTEX', 'INSERT'];
const OUTLINES = ['POINT', 'LINE', 'LWPOLYLINE', 'POLYLINE', 'CIRCLE', 'ARC', 'ELLIPSE', 'SPLINE'];
const KEPT_TYPES = new Set([...STRUCTURE, ...OUTLINES]);
/** Names, handles, coordinates, sizes, angles, flags and the direction of extrusion. */
const KEPT_CODES = new Set([5, 10, 11, 20, 21, 40, 41, 42, 44, 45, 50, 51, 60, 67, 70, 71, 72, 73, 210, 220, 230]);
const NAME_CODES = new Set([2, 8]);
const KEPT_SECTIONS = ['BLOCKS', 'ENTITIES'];

type State = {
  section: string;
  /** The type that the groups belong to. */
  type: string;
  isKept: boolean;
  header: string;
  unitCode: number | null;
  isWhole: boolean;
  readonly lines: string[];
  readonly otherTypes: Map<string, number>;
};

/**
 * Goes once through the group codes of an ASCII drawing. Errors: `format-invalid` with the line where a group code is no
 * number or a corner has no polyline.
 */
export function tidyDrawing(text: string, where: string): Result<TidyDrawing> {
  const lines = text.split(/\r\n|\r|\n/);
  const state: State = {
    section: '',
    type: '',
    isKept: false,
    header: '',
    unitCode: null,
    isWhole: false,
    lines: [],
    otherTypes: new Map(),
  };
  for (let at = 0; at + 1 < lines.length && !state.isWhole; at += 2) {
    const code = (lines[at] ?? '').trim();
    if (!/^-?\d{1,4}$/.test(code)) return noCode(code, where, at + 1);
    const isLost = take(state, Number(code), (lines[at + 1] ?? '').trim());
    if (isLost) return lostCorner(where, at + 1);
  }
  if (KEPT_SECTIONS.includes(state.section)) state.lines.push('0', 'ENDSEC');
  const { unitCode, otherTypes, isWhole } = state;
  return ok({ text: [...state.lines, '0', 'EOF'].join('\n'), unitCode, otherTypes, isWhole });
}

/** Takes in one group; true where it is a corner without a polyline. */
function take(state: State, code: number, value: string): boolean {
  if (code === 0) return takeType(state, value);
  if (state.type === 'SECTION' && code === 2) {
    state.section = value;
    state.type = '';
    if (KEPT_SECTIONS.includes(value)) state.lines.push('0', 'SECTION', '2', value);
  } else if (state.section === 'HEADER') takeHeader(state, code, value);
  else if (state.isKept && NAME_CODES.has(code)) state.lines.push(String(code), NAME_MARK + value);
  else if (state.isKept && KEPT_CODES.has(code)) state.lines.push(String(code), value);
  return false;
}

function takeHeader(state: State, code: number, value: string): void {
  if (code === 9) state.header = value;
  else if (state.header === '$INSUNITS' && code === 70) state.unitCode = /^\d{1,3}$/.test(value) ? Number(value) : null;
}

function takeType(state: State, value: string): boolean {
  const isInside = KEPT_SECTIONS.includes(state.section);
  const before = state.type;
  state.type = value;
  if (value === 'EOF') state.isWhole = true;
  else if (value === 'SECTION') state.isKept = false;
  else if (value === 'ENDSEC') {
    if (isInside) state.lines.push('0', 'ENDSEC');
    state.section = '';
    state.isKept = false;
  } else if (isInside) {
    state.isKept = KEPT_TYPES.has(value);
    if (state.isKept) state.lines.push('0', value);
    else state.otherTypes.set(value, (state.otherTypes.get(value) ?? 0) + 1);
    return value === 'VERTEX' && before !== 'VERTEX' && before !== 'POLYLINE';
  }
  return false;
}

function noCode(code: string, where: string, line: number): Result<never> {
  const detail = `Where a group code should be there is "${code.slice(0, 20)}".`;
  return err('format-invalid', `${where}, line ${line}`, detail, 'The drawing is damaged. Export it again as DXF.');
}

function lostCorner(where: string, line: number): Result<never> {
  const detail = 'A corner does not belong to any polyline.';
  return err('format-invalid', `${where}, line ${line}`, detail, 'The drawing is damaged. Export it again as DXF.');
}
