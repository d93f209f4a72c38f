import { useEffect, useRef, useState } from 'react';
import { counted } from '../../format/index.ts';
import {
  deleteParts,
  editCorners,
  mergeZones,
  offsetParts,
  pickUp,
  squareParts,
  stripParts,
  useBook,
  useFormat,
  useOffsetWish,
  useParts,
  useProperty,
  useSelection,
  whyNotEdit,
  whyNotMerge,
  whyNotOnOutlines,
  workedParts,
} from '../../stores/index.ts';
import { Button, readTyped, Section } from '../../ui/index.ts';
import { PartChoice } from './draw-choice.tsx';

/** What can be done with the parts that are chosen. */
export function PartTools() {
  const { parts } = useParts();
  const property = useProperty(useSelection((state) => state.propertyId));
  useSelection((state) => state.zoneId);
  useBook((state) => state.open?.book.properties);
  const worked = workedParts();
  if (property === null) return null;
  if (worked.length === 0) return <PartChoice property={property} />;
  return (
    <>
      <h2 className="only-spoken">Chosen on the map</h2>
      <Section
        title="Chosen"
        aside={<span className="quiet small">{parts.length === 0 ? 'the zone' : counted(parts.length, 'part')}</span>}
      >
        <div className="draw-actions">
          <Button whyNot={whyNotEdit()} tip="Drag, add and remove corners (E)" onPress={() => editCorners()}>
            Corners
          </Button>
          <Button whyNot={whyNotOnOutlines()} tip="Turn nearly right angles into right ones (Q)" onPress={squareParts}>
            Square up
          </Button>
          <Button whyNot={whyNotMerge()} tip="Make one zone of the chosen ones (M)" onPress={mergeZones}>
            Merge
          </Button>
          <Button tip="Carry to another place (V); Shift and arrows move by 1 ft" onPress={() => pickUp('move')}>
            Move
          </Button>
          <Button tip="The same again at another place (Y)" onPress={() => pickUp('copy')}>
            Copy
          </Button>
          <Button look="danger" tip="Delete (Del)" onPress={deleteParts}>
            Delete
          </Button>
        </div>
        <Offset />
        <PartChoice property={property} />
      </Section>
    </>
  );
}

/** Moves the edge by a typed distance, or lays a bed along it. */
function Offset() {
  const words = useFormat();
  const input = useRef<HTMLInputElement>(null);
  const wish = useOffsetWish((state) => state.count);
  const seen = useRef(wish);
  const [text, setText] = useState('3');
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    if (wish === seen.current) return;
    seen.current = wish;
    input.current?.focus();
    input.current?.select();
  }, [wish]);
  const run = (apply: (feet: number) => void) => {
    const read = readTyped('length', text, 'distance', words.system);
    setFault(read.ok ? null : `${read.error.detail} ${read.error.hint}`);
    if (read.ok) apply(read.value);
  };
  const whyNot = whyNotOnOutlines();
  return (
    <div className="draw-offset">
      <label>
        <span className="small quiet">edge by</span>
        <input
          ref={input}
          className="input input-right"
          aria-label="Distance for the edge"
          autoComplete="off"
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <Button whyNot={whyNot} onPress={() => run(offsetParts)}>
        Out
      </Button>
      <Button whyNot={whyNot} onPress={() => run((feet) => offsetParts(-feet))}>
        In
      </Button>
      <Button whyNot={whyNot} tip="A bed of this width along the inside of the edge" onPress={() => run(stripParts)}>
        Bed along it
      </Button>
      {fault !== null && (
        <span className="fault" role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}
