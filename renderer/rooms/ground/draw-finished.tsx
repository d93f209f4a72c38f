import { useEffect, useRef } from 'react';
import { EXCLUSION_KINDS, type Property } from '../../../core/book/index.ts';
import { changeProperty, changeZone, type PartRef, useParts, useProperty } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Choice, DraftInput, Field, QuantityInput, Section, Tick } from '../../ui/index.ts';

/** Asks for the name, and what else is known only on site, of what was drawn last. The focus goes to its first field. */
export function Finished() {
  const finished = useParts((state) => state.finished);
  const property = useProperty(finished?.part.propertyId ?? null);
  if (finished === null || property === null) return null;
  const { part, newProperty } = finished;
  return <FinishedPart key={`${part.kind} ${part.partId}`} property={property} part={part} newProperty={newProperty} />;
}

type PartProps = { readonly property: Property; readonly part: PartRef; readonly newProperty: boolean };

const TITLES = {
  zone: drawWords.finished.zoneDrawn,
  exclusion: drawWords.finished.keptOut,
  gate: drawWords.finished.gatePlaced,
} as const;

function FinishedPart({ property, part, newProperty }: PartProps) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const input = box.current?.querySelector('input');
    input?.focus();
    input?.select();
  }, []);
  return (
    <div ref={box} className="draw-finished">
      <Section title={newProperty ? commonWords.newLawn : TITLES[part.kind]}>
        {newProperty && <LawnFields property={property} />}
        {part.kind === 'zone' && <ZoneFields property={property} zoneId={part.partId} named={!newProperty} />}
        {part.kind === 'exclusion' && <ExclusionFields property={property} exclusionId={part.partId} />}
        {part.kind === 'gate' && <GateFields property={property} gateId={part.partId} />}
      </Section>
    </div>
  );
}

function LawnFields({ property }: { readonly property: Property }) {
  return (
    <>
      <Field label={drawWords.finished.name}>
        <DraftInput
          label={drawWords.finished.nameOfLawn}
          text={property.name}
          onCommit={(name) => changeProperty(property, { name }, commonWords.changeName)}
        />
      </Field>
      <Field label={drawWords.finished.address}>
        <DraftInput
          label={drawWords.finished.addressOfLawn}
          text={property.address}
          onCommit={(address) => changeProperty(property, { address }, drawWords.finished.changeAddress)}
        />
      </Field>
    </>
  );
}

type ZoneFieldsProps = { readonly property: Property; readonly zoneId: string; readonly named: boolean };

function ZoneFields({ property, zoneId, named }: ZoneFieldsProps) {
  const zone = property.zones.find((each) => each.id === zoneId);
  if (zone === undefined) return null;
  return (
    <>
      {named && (
        <Field label={drawWords.finished.name}>
          <DraftInput
            label={drawWords.finished.nameOfZone}
            text={zone.name}
            onCommit={(name) => changeZone(property, zoneId, { name }, drawWords.finished.changeNameOfZone)}
          />
        </Field>
      )}
      <Field label={commonWords.slope}>
        <QuantityInput
          kind="slope"
          label={drawWords.finished.slopeOfZone}
          value={zone.slopeDeg}
          onCommit={(slopeDeg) => changeZone(property, zoneId, { slopeDeg: slopeDeg ?? 0 }, commonWords.changeSlope)}
        />
      </Field>
    </>
  );
}

const KIND_OPTIONS = EXCLUSION_KINDS.map((value) => ({ value, words: value }));

function ExclusionFields({ property, exclusionId }: { readonly property: Property; readonly exclusionId: string }) {
  const exclusion = property.exclusions.find((each) => each.id === exclusionId);
  if (exclusion === undefined) return null;
  const change = (changes: Partial<typeof exclusion>, label: string) =>
    changeProperty(
      property,
      { exclusions: property.exclusions.map((each) => (each === exclusion ? { ...each, ...changes } : each)) },
      label,
    );
  return (
    <>
      <Field label={drawWords.finished.name}>
        <DraftInput
          label={drawWords.finished.nameOfExclusion}
          text={exclusion.name}
          placeholder={exclusion.what}
          onCommit={(name) => change({ name }, drawWords.finished.changeNameOfExclusion)}
        />
      </Field>
      <Field label={commonWords.kind}>
        <Choice
          label={drawWords.finished.kindOfExclusion}
          value={exclusion.what}
          options={KIND_OPTIONS}
          onChoose={(what) => {
            change({ what }, drawWords.finished.changeKindOfExclusion);
          }}
        />
      </Field>
    </>
  );
}

function GateFields({ property, gateId }: { readonly property: Property; readonly gateId: string }) {
  const gate = property.gates.find((each) => each.id === gateId);
  if (gate === undefined) return null;
  const change = (changes: Partial<typeof gate>, label: string) =>
    changeProperty(
      property,
      { gates: property.gates.map((each) => (each === gate ? { ...each, ...changes } : each)) },
      label,
    );
  return (
    <>
      <Field label={drawWords.finished.clearWidth}>
        <QuantityInput
          kind="width"
          label={drawWords.finished.widthOfGate}
          value={gate.clearWidthIn}
          positive
          onCommit={(clearWidthIn) =>
            change({ clearWidthIn: clearWidthIn ?? gate.clearWidthIn }, drawWords.finished.changeGateWidth)
          }
        />
      </Field>
      <Field label={drawWords.finished.name}>
        <DraftInput
          label={drawWords.finished.nameOfGate}
          text={gate.name}
          onCommit={(name) => change({ name }, drawWords.finished.changeGateName)}
        />
      </Field>
      <div className="ticks">
        {property.zones.map((zone) => (
          <LeadsTo key={zone.id} property={property} zoneId={zone.id} gateId={gateId} />
        ))}
      </div>
    </>
  );
}

type LeadsToProps = { readonly property: Property; readonly zoneId: string; readonly gateId: string };

function LeadsTo({ property, zoneId, gateId }: LeadsToProps) {
  const zone = property.zones.find((each) => each.id === zoneId);
  if (zone === undefined) return null;
  const others = zone.gateIds.filter((id) => id !== gateId);
  return (
    <Tick
      label={drawWords.finished.leadsTo(zone.name)}
      checked={zone.gateIds.includes(gateId)}
      onChange={(on) => {
        changeZone(
          property,
          zoneId,
          { gateIds: on ? [...others, gateId] : others },
          drawWords.finished.changeGateZones,
        );
      }}
    />
  );
}
