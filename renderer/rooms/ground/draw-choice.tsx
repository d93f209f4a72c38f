import type { Property } from '../../../core/book/index.ts';
import { isSamePart, type PartRef, partName, toggleParts, useParts } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { Tick } from '../../ui/index.ts';

/** Every part of a lawn to tick, for choosing several without a mouse. */
export function PartChoice({ property }: { readonly property: Property }) {
  const parts = useParts((state) => state.parts);
  const all = partsOfLawn(property);
  if (all.length === 0) return null;
  return (
    <details className="draw-choice">
      <summary className="small">{drawWords.choice.label}</summary>
      <div className="ticks">
        {all.map((part) => (
          <Tick
            key={`${part.kind} ${part.partId}`}
            label={`${part.kind} ${partName(property, part)}`}
            checked={parts.some((each) => isSamePart(each, part))}
            onChange={() => toggleParts(part)}
          />
        ))}
      </div>
    </details>
  );
}

function partsOfLawn({ id: propertyId, zones, exclusions, gates }: Property): readonly PartRef[] {
  return [
    ...zones.map(({ id }): PartRef => ({ propertyId, kind: 'zone', partId: id })),
    ...exclusions.map(({ id }): PartRef => ({ propertyId, kind: 'exclusion', partId: id })),
    ...gates.map(({ id }): PartRef => ({ propertyId, kind: 'gate', partId: id })),
  ];
}
