import { decodeLatin } from '../text/index.ts';
import type { GroundReader } from '../types.ts';
import { readDrawing } from './source.ts';
import { isBinaryDrawing } from './varieties.ts';

const GLANCE_BYTES = 4000;

/** Drawings of planning programs, as text. */
export const dxfReader: GroundReader = {
  id: 'dxf',
  title: 'Drawings (DXF)',
  extensions: ['dxf', 'dwg'],
  looksLike: (bytes) => {
    const start = decodeLatin(bytes.subarray(0, GLANCE_BYTES)).replace(
      /^\s*999[\s\S]*?(?=\n\s*0\s*\n|\n\s*0\s*\r)/,
      '',
    );
    return isBinaryDrawing(bytes) || /^\s*0\s*[\r\n]+\s*SECTION\s*[\r\n]/.test(start);
  },
  read: async (bytes, fileName, options) => readDrawing(bytes, fileName, options),
};
