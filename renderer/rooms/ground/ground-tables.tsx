import { Trash2 } from 'lucide-react';
import { ok } from '../../../core/base/index.ts';
import { EXCLUSION_KINDS, type Exclusion, type Gate, type Property } from '../../../core/book/index.ts';
import { changeProperty, freshId, showError, showNews } from '../../stores/index.ts';
import { groundWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { PartRow } from './part-row.tsx';

type TableProps = { readonly property: Property };

/** The openings on the way to turf. */
export function GatesTable({ property }: TableProps) {
  const change = (gate: Gate, label: string) =>
    changeProperty(property, { gates: property.gates.map((each) => (each.id === gate.id ? gate : each)) }, label);
  const leadsTo = (gate: Gate) =>
    property.zones
      .filter((zone) => zone.gateIds.includes(gate.id))
      .map((zone) => zone.name)
      .join(', ');
  return (
    <Section title={groundWords.groundTables.gates}>
      {property.gates.length > 0 && (
        <table className="table table-edit">
          <thead>
            <tr>
              <th scope="col">{groundWords.groundTables.gate}</th>
              <th scope="col">{groundWords.groundTables.leadsTo}</th>
              <th scope="col" className="number">
                {groundWords.groundTables.clearWidth}
              </th>
              <th scope="col">{groundWords.groundTables.locked}</th>
              <th scope="col">
                <span className="only-spoken">{groundWords.groundTables.removeHead}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {property.gates.map((gate) => (
              <PartRow key={gate.id} part={{ propertyId: property.id, kind: 'gate', partId: gate.id }}>
                <th scope="row">
                  <DraftInput
                    label={groundWords.groundTables.nameOf(gate.name)}
                    text={gate.name}
                    onCommit={(name) => change({ ...gate, name }, groundWords.groundTables.changeName)}
                  />
                </th>
                <td>{leadsTo(gate)}</td>
                <td className="number">
                  <QuantityInput
                    kind="width"
                    label={groundWords.groundTables.widthOf(gate.name)}
                    value={gate.clearWidthIn}
                    positive
                    onCommit={(value) =>
                      change(
                        { ...gate, clearWidthIn: value ?? gate.clearWidthIn },
                        groundWords.groundTables.changeGateWidth,
                      )
                    }
                  />
                </td>
                <td>
                  <Tick
                    shown={false}
                    label={groundWords.groundTables.lockedOf(gate.name)}
                    checked={gate.locked}
                    onChange={(locked) => {
                      change({ ...gate, locked }, groundWords.groundTables.changeLock);
                    }}
                  />
                </td>
                <td className="row-tools">
                  <Button
                    look="quiet"
                    label={groundWords.groundTables.removeOf(gate.name)}
                    tip={groundWords.groundTables.removeThisGate}
                    onPress={() => removeGate(property, gate)}
                  >
                    <Trash2 size={14} aria-hidden="true" />
                  </Button>
                </td>
              </PartRow>
            ))}
          </tbody>
        </table>
      )}
      <NewGate property={property} />
    </Section>
  );
}

/** A gate begins with its clear width: without it nobody knows what passes. */
function NewGate({ property }: TableProps) {
  const add = (clearWidthIn: number) => {
    const id = freshId(property.gates, 'gate');
    const gate: Gate = { id, name: id.replace('-', ' '), clearWidthIn, locked: false };
    return changeProperty(property, { gates: [...property.gates, gate] }, groundWords.groundTables.addGate);
  };
  return (
    <Field label={groundWords.groundTables.addWidth}>
      <QuantityInput
        kind="width"
        label={groundWords.groundTables.widthOfNew}
        value={null}
        optional
        positive
        onCommit={(value) => (value === null ? ok(null) : add(value))}
      />
    </Field>
  );
}

/** Takes a gate out, and out of the ways to its zones. */
function removeGate(property: Property, gate: Gate): void {
  const gates = property.gates.filter((each) => each.id !== gate.id);
  const zones = property.zones.map((zone) => ({ ...zone, gateIds: zone.gateIds.filter((each) => each !== gate.id) }));
  const done = changeProperty(property, { gates, zones }, groundWords.groundTables.removeGate(gate.name));
  if (done.ok) showNews(groundWords.groundTables.gateRemoved(gate.name), true);
  else showError(done.error);
}

function removeExclusion(property: Property, exclusion: Exclusion, name: string): void {
  const exclusions = property.exclusions.filter((each) => each.id !== exclusion.id);
  const done = changeProperty(property, { exclusions }, groundWords.groundTables.removeOf(name));
  if (done.ok) showNews(groundWords.groundTables.isRemoved(name), true);
  else showError(done.error);
}

const KIND_OPTIONS = EXCLUSION_KINDS.map((value) => ({ value, words: value }));

/** Ground that is not treated, with the strip around it that is left as well. */
export function ExclusionsTable({ property }: TableProps) {
  const change = (exclusion: Exclusion, label: string) =>
    changeProperty(
      property,
      { exclusions: property.exclusions.map((each) => (each.id === exclusion.id ? exclusion : each)) },
      label,
    );
  return (
    <Section title={groundWords.groundTables.keptOut}>
      <table className="table table-edit">
        <thead>
          <tr>
            <th scope="col">{groundWords.groundTables.what}</th>
            <th scope="col">{commonWords.kind}</th>
            <th scope="col" className="number">
              {groundWords.groundTables.keepAway}
            </th>
            <th scope="col">
              <span className="only-spoken">{groundWords.groundTables.removeHead}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {property.exclusions.map((exclusion) => {
            const name = exclusion.name === '' ? exclusion.what : exclusion.name;
            return (
              <PartRow key={exclusion.id} part={{ propertyId: property.id, kind: 'exclusion', partId: exclusion.id }}>
                <th scope="row">
                  <DraftInput
                    label={groundWords.groundTables.nameOf(name)}
                    text={name}
                    onCommit={(text) =>
                      change({ ...exclusion, name: text }, groundWords.groundTables.changeNameOfExclusion)
                    }
                  />
                </th>
                <td>
                  <Choice
                    label={groundWords.groundTables.kindOf(name)}
                    value={exclusion.what}
                    options={KIND_OPTIONS}
                    onChoose={(what) => {
                      change({ ...exclusion, what }, groundWords.groundTables.changeKind);
                    }}
                  />
                </td>
                <td className="number">
                  <QuantityInput
                    kind="length"
                    label={groundWords.groundTables.keepAwayOf(name)}
                    value={exclusion.keepAwayFt}
                    onCommit={(value) =>
                      change({ ...exclusion, keepAwayFt: value ?? 0 }, groundWords.groundTables.changeKeepAway)
                    }
                  />
                </td>
                <td className="row-tools">
                  <Button
                    look="quiet"
                    label={groundWords.groundTables.removeOf(name)}
                    tip={groundWords.groundTables.removeThisExclusion}
                    onPress={() => removeExclusion(property, exclusion, name)}
                  >
                    <Trash2 size={14} aria-hidden="true" />
                  </Button>
                </td>
              </PartRow>
            );
          })}
        </tbody>
      </table>
    </Section>
  );
}
