import type { Block } from './blocks.ts';
import { CAUTIONS } from './texts/index.ts';

/** The cautions that stand on every sheet that names a product. */
export const USUAL_CAUTIONS: Block = { kind: 'cautions', title: CAUTIONS.title, items: CAUTIONS.items };
