import { Trash2 } from 'lucide-react';
import { useMemo } from 'react';
import type { Issue } from '../../../core/base/index.ts';
import { CAUTIONS, type Property } from '../../../core/book/index.ts';
import { counted } from '../../format/index.ts';
import {
  changeProperty,
  changeZone,
  measureOf,
  removeLawn,
  selectZone,
  useFormat,
  useProperty,
  useSelection,
} from '../../stores/index.ts';
import { Button, DraftInput, Empty, Field, IssueList, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { ExclusionsTable, GatesTable } from './ground-tables.tsx';

/** What is known of the selected lawn, and can be changed. */
export function LawnInspector() {
  const propertyId = useSelection((state) => state.propertyId);
  const property = useProperty(propertyId);
  if (property === null) {
    return (
      <Empty title="No lawn selected">
        Choose a lawn in the list or on the map to see its zones, gates and exclusions.
      </Empty>
    );
  }
  return <Lawn key={property.id} property={property} />;
}

function Lawn({ property }: { readonly property: Property }) {
  const measure = useMemo(() => measureOf(property), [property]);
  return (
    <div className="inspector">
      <LawnHead property={property} />
      <Areas property={property} />
      <ZonesTable property={property} />
      {property.gates.length > 0 && <GatesTable property={property} />}
      {property.exclusions.length > 0 && <ExclusionsTable property={property} />}
      <Site property={property} />
      <Issues issues={measure.issues} />
    </div>
  );
}

function LawnHead({ property }: { readonly property: Property }) {
  return (
    <header className="inspector-head">
      <h2 className="only-spoken">{property.name}</h2>
      <DraftInput
        label="Name"
        text={property.name}
        onCommit={(name) => changeProperty(property, { name }, 'Change name')}
      />
      <Button look="quiet" label="Remove this lawn" tip="Remove this lawn" onPress={() => removeLawn(property.id)}>
        <Trash2 size={15} aria-hidden="true" />
      </Button>
      <p className="quiet small">{property.address}</p>
    </header>
  );
}

function Areas({ property }: { readonly property: Property }) {
  const words = useFormat();
  const measure = measureOf(property);
  const treatable = measure.treatableSqFt;
  return (
    <dl className="figures">
      <div>
        <dd>{treatable === null ? 'not measured' : words.area(treatable)}</dd>
        <dt>to treat{treatable === null ? '' : `, ${words.largeArea(treatable)}`}</dt>
      </div>
      <div>
        <dd>{words.area(measure.exclusionsSqFt)}</dd>
        <dt>kept out</dt>
      </div>
    </dl>
  );
}

function ZonesTable({ property }: { readonly property: Property }) {
  const zoneId = useSelection((state) => state.zoneId);
  const measures = new Map(measureOf(property).zones.map((zone) => [zone.zoneId, zone]));
  return (
    <Section title="Zones" aside={<span className="quiet small">{counted(property.zones.length, 'zone')}</span>}>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">zone</th>
            <th scope="col" className="number">
              to treat
            </th>
            <th scope="col">area is</th>
            <th scope="col" className="number">
              slope
            </th>
          </tr>
        </thead>
        <tbody>
          {property.zones.map((zone) => (
            <tr key={zone.id} className={zone.id === zoneId ? 'row-selected' : undefined}>
              <th scope="row">
                <button
                  type="button"
                  className="row-button"
                  aria-pressed={zone.id === zoneId}
                  onClick={() => selectZone(property.id, zone.id === zoneId ? null : zone.id)}
                >
                  {zone.name}
                </button>
              </th>
              <td className="number">
                <ZoneArea property={property} zoneId={zone.id} areaSqFt={measures.get(zone.id)?.areaSqFt ?? null} />
              </td>
              <td>{zone.shape.kind}</td>
              <td className="number">
                <QuantityInput
                  kind="slope"
                  label={`Slope of ${zone.name}`}
                  value={zone.slopeDeg}
                  onCommit={(slopeDeg) => changeZone(property, zone.id, { slopeDeg: slopeDeg ?? 0 }, 'Change slope')}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Section>
  );
}

type ZoneAreaProps = { readonly property: Property; readonly zoneId: string; readonly areaSqFt: number | null };

/** A drawn zone's area is measured; a stated one can be written. */
function ZoneArea({ property, zoneId, areaSqFt }: ZoneAreaProps) {
  const words = useFormat();
  const shape = property.zones.find((zone) => zone.id === zoneId)?.shape;
  if (shape?.kind !== 'stated') return <>{areaSqFt === null ? 'not measured' : words.area(areaSqFt)}</>;
  return (
    <QuantityInput
      kind="area"
      label="Stated area"
      value={shape.areaSqFt}
      onCommit={(value) =>
        changeZone(property, zoneId, { shape: { ...shape, areaSqFt: value ?? 0 } }, 'Change stated area')
      }
    />
  );
}

const CAUTION_WORDS: Readonly<Record<(typeof CAUTIONS)[number], string>> = {
  pets: 'pets',
  children: 'children',
  water: 'open water',
  steep: 'steep ground',
  locked: 'locked',
  traffic: 'traffic',
  'neighbour-garden': "neighbour's garden",
  beehives: 'beehives',
};

function Site({ property }: { readonly property: Property }) {
  const words = useFormat();
  return (
    <Section title="On site">
      <div className="ticks">
        {CAUTIONS.map((caution) => (
          <Tick
            key={caution}
            label={CAUTION_WORDS[caution]}
            checked={property.cautions.includes(caution)}
            onChange={(on) => {
              const cautions = on
                ? [...property.cautions, caution]
                : property.cautions.filter((each) => each !== caution);
              changeProperty(property, { cautions }, 'Change cautions');
            }}
          />
        ))}
        <Tick
          label="no room for a trailer"
          checked={property.noTrailer}
          onChange={(noTrailer) => {
            changeProperty(property, { noTrailer }, 'Change trailer access');
          }}
        />
      </div>
      {property.hours !== undefined && (
        <Field label="Work may start">
          {words.clock(property.hours.openMin * 60)} to {words.clock(property.hours.closeMin * 60)}
        </Field>
      )}
      <Field label="Note">
        <DraftInput
          label="Note"
          text={property.note}
          onCommit={(note) => (note.length > 4000 ? tooLong() : changeProperty(property, { note }, 'Change note'))}
        />
      </Field>
    </Section>
  );
}

function tooLong() {
  return {
    ok: false as const,
    error: {
      code: 'quantity-out-of-range' as const,
      where: 'note',
      detail: 'The note is longer than 4,000 characters.',
      hint: 'Shorten it.',
    },
  };
}

/** What measuring found, worst first. */
function Issues({ issues }: { readonly issues: readonly Issue[] }) {
  if (issues.length === 0) return null;
  return (
    <Section title="To check">
      <IssueList issues={issues} />
    </Section>
  );
}
