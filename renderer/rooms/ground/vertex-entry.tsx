import { type FormEvent, useRef, useState } from 'react';
import { type Draft, placeAlong, propertyIdOf, sidesOf } from '../../../core/sketch/index.ts';
import { mapMiddle, propertyOf, say, typedStep, useFormat } from '../../stores/index.ts';
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
    say(`Corner ${draft.corners.length + 1}`);
    setLength('');
    setTurn('');
    setFault(null);
    lengthInput.current?.focus();
  };
  return (
    <form className="vertex-entry" onSubmit={add}>
      <label>
        <span className="small quiet">next side</span>
        <input
          ref={lengthInput}
          className="input input-right"
          aria-label="Length of the next side"
          placeholder={words.system === 'us' ? 'ft' : 'm'}
          autoComplete="off"
          value={length}
          onChange={(event) => setLength(event.target.value)}
        />
      </label>
      <label>
        <span className="small quiet">{before === undefined ? 'bearing' : 'turn'}</span>
        <input
          className="input input-right"
          aria-label={before === undefined ? 'Bearing of the first side' : 'Turn before the next side'}
          placeholder="°"
          autoComplete="off"
          value={turn}
          onChange={(event) => setTurn(event.target.value)}
        />
      </label>
      <button type="submit" className="button button-plain">
        Add side
      </button>
      {fault !== null && (
        <span className="fault" role="alert">
          {fault}
        </span>
      )}
      <p className="quiet small">Turns are clockwise: 90 to the right, -90 to the left.</p>
    </form>
  );
}

/** The first corner without a mouse. */
function Start({ draft }: { readonly draft: Draft }) {
  const parking = propertyOf(propertyIdOf(draft.purpose))?.parking ?? null;
  const start = (at: readonly [number, number]) => typedStep({ kind: 'add', at });
  return (
    <div className="vertex-start">
      <span className="small quiet">Type it from nothing: start at</span>
      <Button onPress={() => start(mapMiddle())}>the middle of the map</Button>
      {parking !== null && <Button onPress={() => start(parking)}>the parking point</Button>}
    </div>
  );
}
