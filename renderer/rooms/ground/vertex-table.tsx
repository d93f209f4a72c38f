import { Plus, Trash2 } from 'lucide-react';
import type { Result } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import { type Draft, isOutline, type OutlineSide, sidesOf, withSide } from '../../../core/sketch/index.ts';
import { markCorner, typedStep, useDraft } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { Button, QuantityInput, Section } from '../../ui/index.ts';
import { AngleInput } from './vertex-angle.tsx';
import { VertexClose } from './vertex-close.tsx';
import { VertexEntry } from './vertex-entry.tsx';
import { VertexPlace } from './vertex-place.tsx';

/** More rows than this are shown in parts round the marked corner. */
const MOST_ROWS = 60;

/** The outline as a table: each side with its length and direction, each corner with its place; all can be typed. */
export function VertexTable({ draft }: { readonly draft: Draft }) {
  const marked = useDraft((state) => state.marked);
  const { corners } = draft;
  const closed = isOutline(draft.purpose) && corners.length > 2;
  const sides = sidesOf(corners, closed);
  const first = Math.max(0, Math.min((marked ?? corners.length) - MOST_ROWS / 2, corners.length - MOST_ROWS));
  const rows = corners.slice(first, first + MOST_ROWS).map((_, offset) => first + offset);
  return (
    <Section title={drawWords.vertexTable.sidesAndCorners}>
      {corners.length > 0 && (
        <table className="table vertex-table">
          <thead>
            <tr>
              <th scope="col">{drawWords.vertexTable.from}</th>
              <th scope="col" className="number">
                {drawWords.vertexTable.length}
              </th>
              <th scope="col" className="number">
                {drawWords.vertexTable.bearing}
              </th>
              <th scope="col" className="number">
                {drawWords.vertexTable.turn}
              </th>
              <th scope="col">
                <span className="only-spoken">{drawWords.vertexTable.tools}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((index) => (
              <Row key={index} draft={draft} index={index} side={sides[index]} />
            ))}
          </tbody>
        </table>
      )}
      {corners.length > MOST_ROWS && (
        <p className="quiet small">{drawWords.vertexTable.shown(first + 1, first + rows.length, corners.length)}</p>
      )}
      {marked !== null && corners[marked] !== undefined && (
        <VertexPlace index={marked} at={corners[marked] as Position} />
      )}
      {draft.base === undefined && <VertexClose draft={draft} />}
      {draft.base === undefined && <VertexEntry draft={draft} />}
    </Section>
  );
}

type RowProps = {
  readonly draft: Draft;
  readonly index: number;
  readonly side: OutlineSide | undefined;
};

function Row({ draft, index, side }: RowProps) {
  const marked = useDraft((state) => state.marked);
  const type = (change: Parameters<typeof withSide>[2]): Result<unknown> => {
    const next = withSide(draft.corners, index, change);
    if (next.ok) typedStep({ kind: 'replace', corners: next.value });
    return next;
  };
  const name = drawWords.vertexTable.side(index + 1);
  return (
    <tr className={marked === index ? 'row-selected' : undefined}>
      <th scope="row">
        <button
          type="button"
          className="row-button"
          aria-pressed={marked === index}
          aria-label={drawWords.vertexTable.corner(index + 1)}
          onClick={() => markCorner(marked === index ? null : index)}
        >
          {index + 1}
        </button>
      </th>
      <td className="number">
        {side !== undefined && (
          <QuantityInput
            kind="length"
            label={drawWords.vertexTable.lengthOf(name)}
            value={side.lengthFt}
            positive
            onCommit={(lengthFt) => type({ lengthFt: lengthFt ?? 0 })}
          />
        )}
      </td>
      <td className="number">
        {side !== undefined && (
          <AngleInput
            label={drawWords.vertexTable.bearingOf(name)}
            deg={side.bearingDeg}
            onType={(bearingDeg) => type({ bearingDeg })}
          />
        )}
      </td>
      <td className="number">
        {side?.turnDeg != null && (
          <AngleInput
            label={drawWords.vertexTable.turnBefore(name)}
            deg={side.turnDeg}
            onType={(turnDeg) => type({ turnDeg })}
          />
        )}
      </td>
      <td className="row-tools">
        <Button
          look="quiet"
          label={drawWords.vertexTable.addCornerIn(name)}
          tip={drawWords.vertexTable.addCorner}
          whyNot={side === undefined ? drawWords.vertexTable.noSideAfter : null}
          onPress={() => side !== undefined && typedStep({ kind: 'add', index: index + 1, at: middle(side) })}
        >
          <Plus size={13} aria-hidden="true" />
        </Button>
        <Button
          look="quiet"
          label={drawWords.vertexTable.removeCorner(index + 1)}
          tip={drawWords.vertexTable.removeThis}
          whyNot={draft.base !== undefined && draft.corners.length <= 3 ? drawWords.vertexTable.keepsThree : null}
          onPress={() => typedStep({ kind: 'remove', index })}
        >
          <Trash2 size={13} aria-hidden="true" />
        </Button>
      </td>
    </tr>
  );
}

function middle({ from, to }: OutlineSide): Position {
  return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
}
