import { Trash2 } from 'lucide-react';
import { useMemo } from 'react';
import type { Issue } from '../../../core/base/index.ts';
import { CAUTIONS, type Property } from '../../../core/book/index.ts';
import type { PropertyMeasure } from '../../../core/measure/index.ts';
import { CAUTION_WORDS } from '../../../core/reports/index.ts';
import { CommandButton } from '../../commands/index.ts';
import type { Formatter } from '../../format/index.ts';
import {
  addLawn,
  changeProperty,
  measureOf,
  roomOfIssue,
  selectProperty,
  useBook,
  useChecks,
  useFormat,
  useProperty,
  useSelection,
} from '../../stores/index.ts';
import { groundWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button, ChecksList, DraftInput, Empty, Field, Section, Tick } from '../../ui/index.ts';
import { PlacedBy } from './background-placed-by.tsx';
import { CustomerFields } from './customer-fields.tsx';
import { EstimatePanel } from './estimate-panel.tsx';
import { PastSection } from './field-work-past.tsx';
import { ZonesSection } from './field-work-zones.tsx';
import { ExclusionsTable, GatesTable } from './ground-tables.tsx';
import { RoundTerms } from './round-terms.tsx';
import { WhenToWork } from './when-to-work.tsx';
import { ZonePasses } from './zone-passes.tsx';

/** What is known of the selected lawn, and can be changed. */
export function LawnInspector() {
  const propertyId = useSelection((state) => state.propertyId);
  const property = useProperty(propertyId);
  const first = useBook((state) => state.open?.book.properties[0]);
  if (property === null) {
    const action =
      first === undefined ? (
        <Button onPress={addLawn}>{groundWords.lawnList.addByArea}</Button>
      ) : (
        <Button onPress={() => selectProperty(first.id)}>{groundWords.lawnInspector.select(first.name)}</Button>
      );
    return (
      <>
        <Empty title={groundWords.lawnInspector.noLawn} actions={action}>
          {first === undefined ? groundWords.lawnInspector.noLawnsAdvice : groundWords.lawnInspector.noLawnAdvice}
        </Empty>
        <GroundChecks />
      </>
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
      <ZonesSection property={property} />
      <ZonePasses property={property} />
      <GatesTable property={property} />
      {property.exclusions.length > 0 && <ExclusionsTable property={property} />}
      <Site property={property} />
      <RoundTerms property={property} />
      <CustomerFields property={property} />
      <PastSection property={property} />
      <EstimatePanel property={property} />
      <Checks property={property} issues={measure.issues} />
    </div>
  );
}

function LawnHead({ property }: { readonly property: Property }) {
  return (
    <header className="inspector-head">
      <h2 className="only-spoken">{property.name}</h2>
      <DraftInput
        label={commonWords.name}
        text={property.name}
        onCommit={(name) => changeProperty(property, { name }, commonWords.changeName)}
      />
      <CommandButton id="edit.remove-lawn" look="quiet" bare>
        <Trash2 size={15} aria-hidden="true" />
      </CommandButton>
      <PlacedBy property={property} />
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
        <dd>{treatable === null ? commonWords.notMeasured : words.area(treatable)}</dd>
        <dt>
          {groundWords.lawnInspector.toTreat(treatable === null ? '' : `, ${words.largeArea(treatable)}`)}
          <span className="block">{errorWords(measure, words)}</span>
        </dt>
      </div>
      <div>
        <dd>{words.area(measure.exclusionsSqFt)}</dd>
        <dt>{groundWords.lawnInspector.keptOut}</dt>
      </div>
    </dl>
  );
}

function Site({ property }: { readonly property: Property }) {
  return (
    <Section title={groundWords.lawnInspector.onSite}>
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
              changeProperty(property, { cautions }, groundWords.lawnInspector.changeCautions);
            }}
          />
        ))}
        <Tick
          label={groundWords.lawnInspector.noTrailer}
          checked={property.noTrailer}
          onChange={(noTrailer) => {
            changeProperty(property, { noTrailer }, groundWords.lawnInspector.changeTrailer);
          }}
        />
      </div>
      <WhenToWork property={property} />
      <Field label={groundWords.lawnInspector.note}>
        <DraftInput
          label={groundWords.lawnInspector.note}
          text={property.note}
          onCommit={(note) =>
            note.length > 4000 ? tooLong() : changeProperty(property, { note }, groundWords.lawnInspector.changeNote)
          }
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
      where: groundWords.lawnInspector.notePlace,
      detail: groundWords.lawnInspector.noteTooLong,
      hint: commonWords.shortenIt,
    },
  };
}

/** "± 761 ft²"; where some zones have no known error, of those that have one. */
function errorWords(measure: PropertyMeasure, words: Formatter): string {
  if (measure.errorSqFt !== null) return `± ${words.area(measure.errorSqFt)}`;
  const known = measure.zones.flatMap((each) => each.errorSqFt ?? []);
  if (known.length === 0) return measure.treatableSqFt === null ? '' : groundWords.lawnInspector.errorUnknown;
  return groundWords.lawnInspector.errorOfDrawn(words.area(known.reduce((sum, each) => sum + each, 0)));
}

type LawnChecksProps = { readonly property: Property; readonly issues: readonly Issue[] };

/** What measuring and the checks found about the lawn, worst first. */
function Checks({ property, issues }: LawnChecksProps) {
  const all = useChecks((state) => state.issues);
  const found = useMemo(
    () => [...issues, ...all.filter((each) => each.propertyId === property.id)],
    [all, issues, property.id],
  );
  if (found.length === 0) return null;
  return (
    <Section title={commonWords.toCheck}>
      <ChecksList findings={found} />
    </Section>
  );
}

/** What the checks found about all the ground of the book. */
function GroundChecks() {
  const all = useChecks((state) => state.issues);
  const found = useMemo(() => all.filter((each) => roomOfIssue(each) === 'ground'), [all]);
  if (found.length === 0) return null;
  return (
    <div className="inspector">
      <Section
        title={commonWords.toCheck}
        aside={<span className="quiet small">{groundWords.lawnInspector.findings(found.length)}</span>}
      >
        <ChecksList findings={found} linked />
      </Section>
    </div>
  );
}
