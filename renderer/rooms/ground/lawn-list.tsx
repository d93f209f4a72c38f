import { FileInput, Plus, TriangleAlert } from 'lucide-react';
import { memo, useDeferredValue, useMemo, useState } from 'react';
import type { Property } from '../../../core/book/index.ts';
import { COMMANDS, CommandButton, commandForKey } from '../../commands/index.ts';
import { lookAtFirstSample } from '../../next/index.ts';
import {
  knownMeasure,
  selectProperty,
  showSelectionOnMap,
  useBook,
  useFormat,
  useHost,
  useMeasures,
  useSelection,
} from '../../stores/index.ts';
import { groundWords } from '../../texts/ground/index.ts';
import { commonWords, nextWords } from '../../texts/index.ts';
import { Button, Empty, VirtualList } from '../../ui/index.ts';

const ROW_PX = 48;
const NONE: readonly Property[] = [];

/** Every lawn of the book, with its treatable area. Long lists are drawn only where they are seen. */
export function LawnList() {
  const properties = useBook((state) => state.open?.book.properties ?? NONE);
  const [query, setQuery] = useState('');
  const sought = useDeferredValue(query);
  const found = useMemo(() => searchLawns(properties, sought), [properties, sought]);
  if (properties.length === 0) return <NoLawns />;
  return (
    <div className="list-panel">
      <div className="list-head">
        <h2>
          {found.length === properties.length
            ? commonWords.lawns(found.length)
            : groundWords.lawnList.shownOf(found.length, properties.length)}
        </h2>
        <TurfTotal />
        <span className="list-tools">
          <CommandButton id="edit.add-lawn" look="quiet" bare>
            <Plus size={16} aria-hidden="true" />
          </CommandButton>
          <CommandButton id="book.import" look="quiet" bare>
            <FileInput size={16} aria-hidden="true" />
          </CommandButton>
        </span>
      </div>
      <input
        className="input search"
        type="search"
        aria-label={groundWords.lawnList.findLabel}
        placeholder={groundWords.lawnList.find}
        value={query}
        onChange={(event) => setQuery(event.target.value)}
      />
      <Lawns properties={found} />
    </div>
  );
}

/** Lawns whose name, address or id holds the text. */
export function searchLawns(properties: readonly Property[], query: string): readonly Property[] {
  const sought = query.trim().toLowerCase();
  if (sought === '') return properties;
  return properties.filter(({ name, address, id }) => `${name}\n${address}\n${id}`.toLowerCase().includes(sought));
}

function TurfTotal() {
  const { done, total, treatableSqFt } = useMeasures();
  const words = useFormat();
  if (done < total)
    return <span className="quiet small">{groundWords.lawnList.measuring(Math.floor((100 * done) / total))}</span>;
  return <span className="quiet small">{groundWords.lawnList.turf(words.largeArea(treatableSqFt))}</span>;
}

function Lawns({ properties }: { readonly properties: readonly Property[] }) {
  const selected = useSelection((state) => state.propertyId);
  return (
    <VirtualList
      label={groundWords.lawnList.lawns}
      items={properties}
      rowPx={ROW_PX}
      selectedId={selected}
      onSelect={selectProperty}
      onOpen={showSelectionOnMap}
      isTaken={isCommand}
      subject="lawn"
    >
      {(property) => <LawnRow property={property} />}
    </VirtualList>
  );
}

/** Letters that draw on the lawn that was just chosen do so from its list too; where they do nothing they find a lawn. */
function isCommand(key: string): boolean {
  const command = useHost.getState().settings.letterKeys ? commandForKey(COMMANDS, key.toUpperCase()) : null;
  return command !== null && command.whyNot() === null;
}

/** One lawn: name and area, below them what it is made of. */
const LawnRow = memo(function LawnRow({ property }: { readonly property: Property }) {
  const measure = useMeasures(() => knownMeasure(property));
  const words = useFormat();
  const faults = measure?.issues.filter((each) => each.severity !== 'note').length ?? 0;
  const area = measure?.treatableSqFt ?? null;
  return (
    <div className="lawn-row">
      <span className="row-title" title={property.name}>
        {property.name}
      </span>
      <span className="row-figure">
        {measure === null ? '…' : area === null ? commonWords.notMeasured : words.area(area)}
      </span>
      <span className="row-note">
        {words.said(rowNote(property))}
        {faults > 0 && (
          <span className="caution row-flag">
            <TriangleAlert size={11} aria-hidden="true" /> {groundWords.lawnList.toCheck(faults)}
          </span>
        )}
      </span>
    </div>
  );
});

function rowNote(property: Property): string {
  const zones = commonWords.zones(property.zones.length);
  const narrowest = property.gates.length === 0 ? null : Math.min(...property.gates.map((gate) => gate.clearWidthIn));
  const stated = property.zones.some((zone) => zone.shape.kind === 'stated') ? groundWords.lawnList.stated : '';
  return `${zones}${narrowest === null ? '' : groundWords.lawnList.gate(narrowest)}${stated}`;
}

function NoLawns() {
  return (
    <Empty
      title={groundWords.lawnList.noLawnsYet}
      actions={
        <>
          <CommandButton id="book.import" look="main">
            {groundWords.lawnList.addFromFileMore}
          </CommandButton>
          <CommandButton id="edit.add-lawn">{groundWords.lawnList.addByArea}</CommandButton>
          <Button onPress={lookAtFirstSample}>{nextWords.lookAtSample}</Button>
        </>
      }
    >
      {groundWords.lawnList.noLawnsAdvice}
    </Empty>
  );
}
