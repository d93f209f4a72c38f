import { Trash2 } from 'lucide-react';
import { useMemo } from 'react';
import type { Issue } from '../../../core/base/index.ts';
import { CAUTIONS, type Property } from '../../../core/book/index.ts';
import type { PropertyMeasure } from '../../../core/measure/index.ts';
import { counted, type Formatter } from '../../format/index.ts';
import {
  changeProperty,
  measureOf,
  removeLawn,
  roomOfIssue,
  useChecks,
  useFormat,
  useProperty,
  useSelection,
} from '../../stores/index.ts';
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
  if (property === null) {
    return (
      <>
        <Empty title="No lawn selected">
          Choose a lawn in the list or on the map to see its zones, gates and exclusions.
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
        label="Name"
        text={property.name}
        onCommit={(name) => changeProperty(property, { name }, 'Change name')}
      />
      <Button look="quiet" label="Remove this lawn" tip="Remove this lawn" onPress={() => removeLawn(property.id)}>
        <Trash2 size={15} aria-hidden="true" />
      </Button>
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
        <dd>
          {treatable === null ? 'not measured' : words.area(treatable)}
          <span className="quiet small block">{errorWords(measure, words)}</span>
        </dd>
        <dt>to treat{treatable === null ? '' : `, ${words.largeArea(treatable)}`}</dt>
      </div>
      <div>
        <dd>{words.area(measure.exclusionsSqFt)}</dd>
        <dt>kept out</dt>
      </div>
    </dl>
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
      <WhenToWork property={property} />
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

/** "± 761 ft²"; where some zones have no known error, of those that have one. */
function errorWords(measure: PropertyMeasure, words: Formatter): string {
  if (measure.errorSqFt !== null) return `± ${words.area(measure.errorSqFt)}`;
  const known = measure.zones.flatMap((each) => each.errorSqFt ?? []);
  if (known.length === 0) return measure.treatableSqFt === null ? '' : '± not known';
  return `± ${words.area(known.reduce((sum, each) => sum + each, 0))} of what is drawn`;
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
    <Section title="To check">
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
      <Section title="To check" aside={<span className="quiet small">{counted(found.length, 'finding')}</span>}>
        <ChecksList findings={found} linked />
      </Section>
    </div>
  );
}
