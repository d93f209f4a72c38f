import { useEffect, useRef, useState } from 'react';
import { CommandButton } from '../../commands/index.ts';
import {
  offsetParts,
  stripParts,
  useBook,
  useFormat,
  useOffsetWish,
  useParts,
  useProperty,
  useSelection,
  whyNotOnOutlines,
  workedParts,
} from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
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
      <h2 className="only-spoken">{drawWords.parts.label}</h2>
      <Section
        title={drawWords.parts.chosen}
        aside={
          <span className="quiet small">
            {parts.length === 0 ? drawWords.parts.wholeZone : drawWords.parts.parts(parts.length)}
          </span>
        }
      >
        <div className="draw-actions">
          <CommandButton id="draw.corners" tip={drawWords.parts.cornersTip}>
            {drawWords.parts.corners}
          </CommandButton>
          <CommandButton id="draw.square" tip={drawWords.parts.squareUpTip}>
            {drawWords.parts.squareUp}
          </CommandButton>
          <CommandButton id="draw.merge" tip={drawWords.parts.mergeTip}>
            {drawWords.parts.merge}
          </CommandButton>
          <CommandButton id="draw.move" tip={drawWords.parts.moveTip}>
            {commonWords.move}
          </CommandButton>
          <CommandButton id="draw.copy" tip={drawWords.parts.copyTip}>
            {drawWords.parts.copy}
          </CommandButton>
          <CommandButton id="draw.delete" look="danger" tip={drawWords.parts.deleteTip}>
            {drawWords.parts.delete}
          </CommandButton>
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
        <span className="small quiet">{drawWords.parts.edgeBy}</span>
        <input
          ref={input}
          className="input input-right"
          aria-label={drawWords.parts.edgeLabel}
          autoComplete="off"
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <Button whyNot={whyNot} onPress={() => run(offsetParts)}>
        {drawWords.parts.out}
      </Button>
      <Button whyNot={whyNot} onPress={() => run((feet) => offsetParts(-feet))}>
        {drawWords.parts.in}
      </Button>
      <Button whyNot={whyNot} tip={drawWords.parts.bedTip} onPress={() => run(stripParts)}>
        {drawWords.parts.bedAlong}
      </Button>
      {fault !== null && (
        <span className="fault" role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}
