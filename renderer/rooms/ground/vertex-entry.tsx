import { type FormEvent, useRef, useState } from 'react';
import { type Draft, placeAlong, propertyIdOf, sidesOf } from '../../../core/sketch/index.ts';
import { mapMiddle, propertyOf, say, typedStep, useFormat } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { Button, readTyped } from '../../ui/index.ts';
import { readAngle } from './vertex-angle.tsx';

/** Types the outline side by side: how far, and by how much the way turns (or its bearing, at the first side). */
export function VertexEntry({ draft }: { readonly draft: Draft }) {
  const words = useFormat();
  const lengthInput = useRef<HTMLInputElement>(null);
  const [length, setLength] = useState('');
  const [turn, setTurn] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  if (draft.corners.length === 0) return <Start draft={draft} />;
  const before = sidesOf(draft.corners, false).at(-1);
  const add = (event: FormEvent) => {
    event.preventDefault();
    const feet = readTyped('length', length, 'length', words.system);
    const angle = readAngle(turn === '' ? '0' : turn, 'turn');
    const from = draft.corners.at(-1);
    const refused = !feet.ok ? feet.error : !angle.ok ? angle.error : null;
    if (refused !== null || !feet.ok || !angle.ok || from === undefined) {
      setFault(refused === null ? null : `${refused.detail} ${refused.hint}`);
      return;
    }
    typedStep({ kind: 'add', at: placeAlong(from, (before?.bearingDeg ?? 0) + angle.value, feet.value) });
    say(drawWords.vertexEntry.corner(draft.corners.length + 1));
    setLength('');
    setTurn('');
    setFault(null);
    lengthInput.current?.focus();
  };
  return (
    <form className="vertex-entry" onSubmit={add}>
      <label>
        <span className="small quiet">{drawWords.vertexEntry.nextSide}</span>
        <input
          ref={lengthInput}
          className="input input-right"
          aria-label={drawWords.vertexEntry.lengthLabel}
          placeholder={words.system === 'us' ? drawWords.vertexEntry.ft : drawWords.vertexEntry.metres}
          autoComplete="off"
          value={length}
          onChange={(event) => setLength(event.target.value)}
        />
      </label>
      <label>
        <span className="small quiet">
          {before === undefined ? drawWords.vertexEntry.bearing : drawWords.vertexEntry.turn}
        </span>
        <input
          className="input input-right"
          aria-label={before === undefined ? drawWords.vertexEntry.bearingLabel : drawWords.vertexEntry.turnLabel}
          placeholder={drawWords.vertexEntry.text}
          autoComplete="off"
          value={turn}
          onChange={(event) => setTurn(event.target.value)}
        />
      </label>
      <button type="submit" className="button button-plain">
        {drawWords.vertexEntry.addSide}
      </button>
      {fault !== null && (
        <span className="fault" role="alert">
          {fault}
        </span>
      )}
      <p className="quiet small">{drawWords.vertexEntry.turnNote}</p>
    </form>
  );
}

/** The first corner without a mouse. */
function Start({ draft }: { readonly draft: Draft }) {
  const parking = propertyOf(propertyIdOf(draft.purpose))?.parking ?? null;
  const start = (at: readonly [number, number]) => typedStep({ kind: 'add', at });
  return (
    <div className="vertex-start">
      <span className="small quiet">{drawWords.vertexEntry.startAt}</span>
      <Button onPress={() => start(mapMiddle())}>{drawWords.vertexEntry.middleOfMap}</Button>
      {parking !== null && <Button onPress={() => start(parking)}>{drawWords.vertexEntry.parkingPoint}</Button>}
    </div>
  );
}
