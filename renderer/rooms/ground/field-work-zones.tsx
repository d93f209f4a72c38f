import { Plus, Trash2 } from 'lucide-react';
import type { Property, Zone } from '../../../core/book/index.ts';
import { workingWords } from '../../../core/field-work/index.ts';
import { CommandButton } from '../../commands/index.ts';
import {
  changeProperty,
  measureOf,
  selectZone,
  showError,
  showNews,
  useFormat,
  useSelection,
} from '../../stores/index.ts';
import { fieldWorkWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button, DraftInput, Field, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { AreaForm } from './field-work-area.tsx';
import { SlopeForm } from './field-work-slope.tsx';
import { PartRow } from './part-row.tsx';
import { putZone, withOptional, withSlope } from './zone-edits.ts';

type ZonesProps = { readonly property: Property };

/** The zones of a lawn with their areas, and the form of the one that is looked at. */
export function ZonesSection({ property }: ZonesProps) {
  const zoneId = useSelection((state) => state.zoneId);
  const [only] = property.zones.length === 1 ? property.zones : [];
  const chosen = property.zones.find((zone) => zone.id === zoneId) ?? only;
  return (
    <>
      <Section
        title={fieldWorkWords.zones.zones}
        aside={
          <>
            <span className="quiet small">{commonWords.zones(property.zones.length)}</span>
            <CommandButton id="edit.add-zone" look="quiet" bare tip={fieldWorkWords.zones.addByAreaTip}>
              <Plus size={15} aria-hidden="true" />
            </CommandButton>
          </>
        }
      >
        <ZonesTable property={property} />
      </Section>
      {chosen !== undefined && <ZonePanel key={chosen.id} property={property} zone={chosen} />}
    </>
  );
}

function ZonesTable({ property }: ZonesProps) {
  const words = useFormat();
  const zoneId = useSelection((state) => state.zoneId);
  const measures = new Map(measureOf(property).zones.map((zone) => [zone.zoneId, zone]));
  return (
    <table className="table">
      <thead>
        <tr>
          <th scope="col">{commonWords.zone}</th>
          <th scope="col" className="number">
            {fieldWorkWords.zones.toTreat}
          </th>
          <th scope="col">{fieldWorkWords.zones.areaIs}</th>
          <th scope="col" className="number">
            {commonWords.slope}
          </th>
        </tr>
      </thead>
      <tbody>
        {property.zones.map((zone) => (
          <PartRow
            key={zone.id}
            part={{ propertyId: property.id, kind: 'zone', partId: zone.id }}
            className={zone.id === zoneId ? 'row-selected' : undefined}
          >
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
              <ZoneArea
                areaSqFt={measures.get(zone.id)?.areaSqFt ?? null}
                errorSqFt={measures.get(zone.id)?.errorSqFt ?? null}
              />
            </td>
            <td>{wayWords(zone)}</td>
            <td className="number">
              <QuantityInput
                kind="slope"
                label={fieldWorkWords.zones.slopeOf(zone.name)}
                value={zone.slopeDeg}
                onCommit={(value) => putZone(property, withSlope(zone, value ?? 0), commonWords.changeSlope)}
              />
            </td>
          </PartRow>
        ))}
      </tbody>
      {property.zones.length > 1 && (
        <tfoot>
          <tr className="row-sum">
            <th scope="row">{fieldWorkWords.zones.all}</th>
            <td className="number">
              <ZoneArea areaSqFt={measureOf(property).treatableSqFt} errorSqFt={measureOf(property).errorSqFt} />
            </td>
            <td colSpan={2} className="quiet small">
              {measureOf(property).errorSqFt === null
                ? ''
                : fieldWorkWords.zones.inAllWithin(words.area(measureOf(property).errorSqFt ?? 0))}
            </td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}

function wayWords({ shape }: Zone): string {
  return shape.kind === 'stated' && shape.working !== undefined ? workingWords(shape.working) : shape.kind;
}

type ZoneAreaProps = { readonly areaSqFt: number | null; readonly errorSqFt: number | null };

function ZoneArea({ areaSqFt, errorSqFt }: ZoneAreaProps) {
  const words = useFormat();
  if (areaSqFt === null) return <>{commonWords.notMeasured}</>;
  return (
    <>
      {words.area(areaSqFt)}
      {errorSqFt !== null && <span className="quiet small block">± {words.area(errorSqFt)}</span>}
    </>
  );
}

type ZonePanelProps = { readonly property: Property; readonly zone: Zone };

/** All that can be said of one zone. */
function ZonePanel({ property, zone }: ZonePanelProps) {
  return (
    <Section
      title={fieldWorkWords.zones.zoneTitle(zone.name)}
      aside={
        <Button
          look="quiet"
          label={fieldWorkWords.zones.removeZone(zone.name)}
          tip={fieldWorkWords.zones.removeThis}
          onPress={() => removeZone(property, zone)}
        >
          <Trash2 size={14} aria-hidden="true" />
        </Button>
      }
    >
      <Field label={commonWords.name}>
        <DraftInput
          label={fieldWorkWords.zones.nameOf}
          text={zone.name}
          onCommit={(name) => putZone(property, { ...zone, name }, fieldWorkWords.zones.changeName)}
        />
      </Field>
      <AreaForm property={property} zone={zone} />
      <SlopeForm property={property} zone={zone} />
      <Field label={fieldWorkWords.zones.hose} note={fieldWorkWords.zones.hoseNote}>
        <QuantityInput
          kind="length"
          label={fieldWorkWords.zones.hoseOf(zone.name)}
          value={zone.hosePathFt ?? null}
          optional
          onCommit={(value) =>
            putZone(
              property,
              withOptional<Zone, 'hosePathFt'>(zone, 'hosePathFt', value),
              fieldWorkWords.zones.changeHose,
            )
          }
        />
      </Field>
      <GateTicks property={property} zone={zone} />
    </Section>
  );
}

function removeZone(property: Property, zone: Zone): void {
  const zones = property.zones.filter((each) => each.id !== zone.id);
  const done = changeProperty(property, { zones }, fieldWorkWords.zones.removeZone(zone.name));
  if (!done.ok) {
    showError(done.error);
    return;
  }
  selectZone(property.id, null);
  showNews(fieldWorkWords.zones.zoneRemoved(zone.name), true);
}

/** The gates that have to be passed to reach the zone. */
function GateTicks({ property, zone }: ZonePanelProps) {
  if (property.gates.length === 0) return null;
  const toggle = (id: string, on: boolean) => {
    const gateIds = property.gates
      .map((each) => each.id)
      .filter((each) => (each === id ? on : zone.gateIds.includes(each)));
    return putZone(property, { ...zone, gateIds }, fieldWorkWords.zones.changeGates);
  };
  return (
    <fieldset className="ticks ticks-one">
      <legend className="quiet small">{fieldWorkWords.zones.gates}</legend>
      {property.gates.map(({ id, name }) => (
        <Tick key={id} label={name} checked={zone.gateIds.includes(id)} onChange={(on) => toggle(id, on)} />
      ))}
    </fieldset>
  );
}
