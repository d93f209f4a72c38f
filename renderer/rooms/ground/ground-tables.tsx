import { EXCLUSION_KINDS, type Exclusion, type Gate, type Property } from '../../../core/book/index.ts';
import { changeProperty } from '../../stores/index.ts';
import { Choice, QuantityInput, Section, Tick } from '../../ui/index.ts';

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
    <Section title="Gates">
      <table className="table">
        <thead>
          <tr>
            <th scope="col">gate</th>
            <th scope="col">leads to</th>
            <th scope="col" className="number">
              clear width
            </th>
            <th scope="col">locked</th>
          </tr>
        </thead>
        <tbody>
          {property.gates.map((gate) => (
            <tr key={gate.id}>
              <th scope="row">{gate.name}</th>
              <td>{leadsTo(gate)}</td>
              <td className="number">
                <QuantityInput
                  kind="width"
                  label={`Clear width of ${gate.name}`}
                  value={gate.clearWidthIn}
                  positive
                  onCommit={(value) =>
                    change({ ...gate, clearWidthIn: value ?? gate.clearWidthIn }, 'Change gate width')
                  }
                />
              </td>
              <td>
                <Tick
                  shown={false}
                  label={`${gate.name} is locked`}
                  checked={gate.locked}
                  onChange={(locked) => {
                    change({ ...gate, locked }, 'Change gate lock');
                  }}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Section>
  );
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
    <Section title="Kept out">
      <table className="table">
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">kind</th>
            <th scope="col" className="number">
              keep away
            </th>
          </tr>
        </thead>
        <tbody>
          {property.exclusions.map((exclusion) => {
            const name = exclusion.name === '' ? exclusion.id : exclusion.name;
            return (
              <tr key={exclusion.id}>
                <th scope="row">{name}</th>
                <td>
                  <Choice
                    label={`Kind of ${name}`}
                    value={exclusion.what}
                    options={KIND_OPTIONS}
                    onChoose={(what) => {
                      change({ ...exclusion, what }, 'Change kind of exclusion');
                    }}
                  />
                </td>
                <td className="number">
                  <QuantityInput
                    kind="length"
                    label={`Distance kept from ${name}`}
                    value={exclusion.keepAwayFt}
                    onCommit={(value) => change({ ...exclusion, keepAwayFt: value ?? 0 }, 'Change keep-away distance')}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Section>
  );
}
