import { Trash2 } from 'lucide-react';
import { useState } from 'react';
import { err, ok, type Result } from '../../core/base/index.ts';
import type { Overlay, Position } from '../../core/book/index.ts';
import type { Placement } from '../../core/imagery/index.ts';
import { addPoint, changePoint, removePoint, useFormat } from '../stores/index.ts';
import { backdropWords } from '../texts/index.ts';
import { Button, DraftInput } from '../ui/index.ts';

type Pair = readonly [number, number];
type PointsProps = {
  readonly overlay: Overlay;
  readonly pending: Pair | null;
  readonly placed: Result<Placement>;
};

/** The control points as a table, each half of which can be typed; so no mouse is needed. */
export function PicturePoints({ overlay, pending, placed }: PointsProps) {
  const words = useFormat();
  const off = placed.ok && placed.value.rmsFt !== null ? placed.value.offFt : null;
  return (
    <table className="table picture-points">
      <thead>
        <tr>
          <th scope="col">{backdropWords.points.point}</th>
          <th scope="col">{backdropWords.points.pixelHead}</th>
          <th scope="col">{backdropWords.points.placeHead}</th>
          <th scope="col" className="number">
            {backdropWords.points.off}
          </th>
          <th scope="col">
            <span className="only-spoken">{backdropWords.points.remove}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {overlay.points.map((point, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the list.
          <tr key={index}>
            <th scope="row">{index + 1}</th>
            <td>
              <PairInput
                label={backdropWords.points.pixelOf(index + 1)}
                pair={point.px}
                digits={1}
                read={readPixel}
                onCommit={(px) => changePoint(index, { ...point, px: [px[0], px[1]] })}
              />
            </td>
            <td>
              <PairInput
                label={backdropWords.points.placeOf(index + 1)}
                pair={point.at}
                digits={7}
                read={readPlace}
                onCommit={(at) => changePoint(index, { ...point, at: [at[0], at[1]] })}
              />
            </td>
            <td className="number">{off?.[index] === undefined ? '' : words.length(off[index])}</td>
            <td>
              <Button
                look="quiet"
                label={backdropWords.points.removePoint(index + 1)}
                onPress={() => removePoint(index)}
              >
                <Trash2 size={14} aria-hidden="true" />
              </Button>
            </td>
          </tr>
        ))}
        <NewPoint key={pending?.join() ?? overlay.points.length} number={overlay.points.length + 1} pending={pending} />
      </tbody>
    </table>
  );
}

/** A row for the next point: the pixel chosen in the picture or typed, then the place chosen on the map or typed. */
function NewPoint({ number, pending }: { readonly number: number; readonly pending: Pair | null }) {
  const [px, setPx] = useState<Pair | null>(pending);
  const [at, setAt] = useState<Position | null>(null);
  const finish = (pixel: Pair | null, place: Position | null) => {
    setPx(pixel);
    setAt(place);
    if (pixel !== null && place !== null) addPoint(pixel, place);
  };
  return (
    <tr>
      <th scope="row">{number}</th>
      <td>
        <PairInput
          label={backdropWords.points.pixelOf(number)}
          pair={px}
          digits={1}
          read={readPixel}
          onCommit={(pair) => finish(pair, at)}
        />
      </td>
      <td>
        <PairInput
          label={backdropWords.points.placeOf(number)}
          pair={at}
          digits={7}
          read={readPlace}
          onCommit={(pair) => finish(px, [pair[0], pair[1]])}
        />
      </td>
      <td />
      <td />
    </tr>
  );
}

type PairInputProps = {
  readonly label: string;
  readonly pair: Pair | null;
  readonly digits: number;
  readonly read: (text: string, where: string) => Result<Pair>;
  readonly onCommit: (pair: Pair) => void;
};

function PairInput({ label, pair, digits, read, onCommit }: PairInputProps) {
  return (
    <DraftInput
      label={label}
      text={pair === null ? '' : pair.map((each) => Math.round(each * 10 ** digits) / 10 ** digits).join(', ')}
      placeholder={digits > 1 ? '-83.0120, 40.0310' : '120, 80'}
      onCommit={(text) => {
        const typed = read(text, label);
        if (typed.ok) onCommit(typed.value);
        return typed;
      }}
    />
  );
}

function readPair(text: string): Pair | null {
  const found = /^\s*(-?\d+(?:\.\d+)?)\s*[,;\s]\s*(-?\d+(?:\.\d+)?)\s*$/.exec(text);
  return found === null ? null : [Number(found[1]), Number(found[2])];
}

function readPixel(text: string, where: string): Result<Pair> {
  const pair = readPair(text);
  return pair === null
    ? err('quantity-unreadable', where, backdropWords.points.noPair(text), backdropWords.points.pixelAdvice)
    : ok(pair);
}

function readPlace(text: string, where: string): Result<Pair> {
  const pair = readPair(text);
  if (pair === null)
    return err('quantity-unreadable', where, backdropWords.points.noPair(text), backdropWords.points.placeAdvice);
  const isOnEarth = Math.abs(pair[0]) <= 180 && Math.abs(pair[1]) <= 90;
  return isOnEarth
    ? ok(pair)
    : err('quantity-out-of-range', where, backdropWords.points.noPlace, backdropWords.points.noPlaceAdvice);
}
