import type { DxfBlock, DxfEntity } from 'dxf';
import { planeOf } from './entity.ts';
import { combine, type Matrix, shift, turnAndScale, UNMOVED } from './matrix.ts';
import { NAME_MARK } from './tidy.ts';

/** An entity where it stands in the drawing. */
export type PlacedEntity = {
  readonly entity: DxfEntity;
  readonly layer: string;
  readonly matrix: Matrix;
  /** The block that it comes from; null for entities of the drawing itself. */
  readonly block: string | null;
};

export type Expansion = {
  readonly placed: readonly PlacedEntity[];
  /** Names of blocks that are inserted but not defined. */
  readonly missingBlocks: readonly string[];
  /** Inserts that were not followed: a block inside itself, or one that does not lie flat. */
  readonly refusedInserts: number;
  /** Entities on a sheet for printing, and hidden ones. */
  readonly unseen: number;
  /** True where the limit was reached; then nothing of the expansion should be used. */
  readonly isTooLarge: boolean;
};

/** Blocks are nested a few levels deep; more is taken for a ring. */
const MOST_NESTING = 16;
/** The layer whose entities take that of the insert. */
const FLOATING_LAYER = '0';

type Walk = {
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly placed: PlacedEntity[];
  readonly missing: Set<string>;
  readonly most: number;
  refused: number;
  unseen: number;
  /** Steps done; bounds the work where inserts multiply without placing anything. */
  steps: number;
};

type Spot = {
  readonly matrix: Matrix;
  readonly block: string | null;
  readonly layer: string;
  readonly path: readonly string[];
};

/** Puts the entities of inserted blocks in their places, once for each insert and each cell of its array. */
export function expandDrawing(
  entities: readonly DxfEntity[],
  blocks: readonly DxfBlock[],
  mostEntities: number,
): Expansion {
  const walk: Walk = {
    blocks: new Map(blocks.map((each) => [nameOf(each.name), each])),
    placed: [],
    missing: new Set(),
    most: mostEntities,
    refused: 0,
    unseen: 0,
    steps: 0,
  };
  place(entities, { matrix: UNMOVED, block: null, layer: FLOATING_LAYER, path: [] }, walk);
  return {
    placed: walk.placed,
    missingBlocks: [...walk.missing],
    refusedInserts: walk.refused,
    unseen: walk.unseen,
    isTooLarge: walk.steps > mostEntities,
  };
}

export function nameOf(marked: string | undefined): string {
  return (marked ?? '').slice(NAME_MARK.length);
}

function place(entities: readonly DxfEntity[], spot: Spot, walk: Walk): void {
  for (const entity of entities) {
    walk.steps += 1;
    if (walk.steps > walk.most) return;
    const own = nameOf(entity.layer);
    const layer = own === FLOATING_LAYER || own === '' ? spot.layer : own;
    const isUnseen = entity.visible === false || entity.paperSpace !== undefined;
    if (isUnseen) walk.unseen += 1;
    else if (entity.type === 'INSERT') placeInsert(entity, { ...spot, layer }, walk);
    else walk.placed.push({ entity, layer, matrix: spot.matrix, block: spot.block });
  }
}

function placeInsert(insert: DxfEntity, spot: Spot, walk: Walk): void {
  const name = nameOf(insert.block);
  const block = walk.blocks.get(name);
  const plane = planeOf(insert);
  if (block === undefined) {
    walk.missing.add(name);
    return;
  }
  if (plane === null || spot.path.length >= MOST_NESTING || spot.path.includes(name)) {
    walk.refused += 1;
    return;
  }
  const origin = shift(-(block.x ?? 0), -(block.y ?? 0));
  const { x = 0, y = 0, rotation = 0, scaleX = 1, scaleY = 1 } = insert;
  for (const [columnX, rowY] of cellsOf(insert, walk)) {
    const turned = combine(turnAndScale(rotation, 1, 1), shift(columnX, rowY));
    const inside = combine(combine(combine(shift(x, y), turned), turnAndScale(0, scaleX, scaleY)), origin);
    const matrix = combine(spot.matrix, combine(plane, inside));
    place(block.entities ?? [], { matrix, block: name, layer: spot.layer, path: [...spot.path, name] }, walk);
    if (walk.steps > walk.most) return;
  }
}

/** Offsets of the cells of a rectangular array, turned with the insert but not scaled. */
function cellsOf(insert: DxfEntity, walk: Walk): readonly (readonly [number, number])[] {
  const columns = Math.max(1, Math.floor(insert.columnCount ?? 1) || 1);
  const rows = Math.max(1, Math.floor(insert.rowCount ?? 1) || 1);
  walk.steps += columns * rows;
  if (walk.steps > walk.most) return [];
  return Array.from({ length: columns * rows }, (_, index) => {
    const column = index % columns;
    const row = Math.floor(index / columns);
    return [column * (insert.columnSpacing ?? 0), row * (insert.rowSpacing ?? 0)] as const;
  });
}
