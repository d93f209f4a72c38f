import { Play, Plus, Trash2 } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Book, Fleet, Round } from '../../../core/book/index.ts';
import { compareFleets, fleetPlanName, fleetResult } from '../../../core/compare/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { counted } from '../../format/index.ts';
import {
  freshId,
  planFleets,
  putRecord,
  removeRecord,
  showError,
  useBook,
  useCurrentRound,
  useHost,
  usePlans,
} from '../../stores/index.ts';
import { Button, Choice, DraftInput, Empty, Field, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { FleetFigures } from './fleet-figures.tsx';
import { withMember } from './round-edits.ts';

/** Two fleets on the same round, side by side: how an owner chooses a machine. */
export function FleetsView() {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  if (book === null) return null;
  if (round === null || book.rigs.length === 0)
    return (
      <Empty title="Nothing to compare yet">
        Put rigs in the Shed, also one that you only think of, and add a round: two choices of rigs can then be held
        against each other here.
      </Empty>
    );
  return (
    <div className="ledger">
      <header className="season-head">
        <h2>Fleets for {round.name}</h2>
      </header>
      <FleetList book={book} round={round} />
      {book.fleets.length > 1 && <Compared book={book} round={round} />}
    </div>
  );
}

type PartProps = { readonly book: Book; readonly round: Round };

function FleetList({ book, round }: PartProps) {
  const add = () => {
    const id = freshId(book.fleets, 'fleet');
    const rigIds = book.fleets.length === 0 ? [...round.rigIds] : book.rigs.map((rig) => rig.id);
    const name = book.fleets.length === 0 ? 'As it is' : `Fleet ${book.fleets.length + 1}`;
    const done = putRecord('fleets', { id, name, rigIds, fixedPerSeason: 0, note: '' }, 'Add fleet');
    if (!done.ok) showError(done.error);
  };
  return (
    <Section
      title="Fleets"
      aside={
        <Button look="quiet" label="Add a fleet" tip="Add a fleet" onPress={add}>
          <Plus size={15} aria-hidden="true" />
        </Button>
      }
    >
      {book.fleets.length < 2 && (
        <p className="quiet">
          A fleet is a choice of rigs of the Shed. Two are needed: add one for the rigs that you have, and one with the
          machine, rig or nurse tank that you think of (duplicate a rig in the Shed and change it).
        </p>
      )}
      <div className="fleets">
        {book.fleets.map((fleet) => (
          <FleetCard key={fleet.id} book={book} fleet={fleet} />
        ))}
      </div>
    </Section>
  );
}

function FleetCard({ book, fleet }: { readonly book: Book; readonly fleet: Fleet }) {
  const change = (changes: Partial<Fleet>, label: string) => {
    const done = putRecord('fleets', { ...fleet, ...changes }, label);
    if (!done.ok) showError(done.error);
    return done;
  };
  return (
    <div className="fleet-card">
      <Field label="Name">
        <DraftInput label="Name of the fleet" text={fleet.name} onCommit={(name) => change({ name }, 'Change name')} />
      </Field>
      <div className="ticks ticks-one">
        {book.rigs.map((rig) => (
          <Tick
            key={rig.id}
            label={rig.name}
            checked={fleet.rigIds.includes(rig.id)}
            onChange={(on) => {
              const rigIds = withMember(fleet.rigIds, rig.id, on);
              if (rigIds.length > 0) change({ rigIds: [...rigIds] }, 'Change rigs of a fleet');
              else
                showError({
                  code: 'nothing-to-do',
                  where: `fleet ${fleet.name}`,
                  detail: 'A fleet needs at least one rig.',
                  hint: 'Tick another one first.',
                });
            }}
          />
        ))}
      </div>
      <Field label="fixed cost a season">
        <QuantityInput
          label={`${fleet.name}: fixed cost a season`}
          kind="money"
          value={fleet.fixedPerSeason}
          onCommit={(value) => change({ fixedPerSeason: value ?? 0 }, 'Change fixed cost of a fleet')}
        />
      </Field>
      <Button look="danger" onPress={() => removeRecord('fleets', fleet.id, fleet.name)}>
        <Trash2 size={14} aria-hidden="true" /> Remove
      </Button>
    </div>
  );
}

function Compared({ book, round }: PartProps) {
  const plans = usePlans((state) => state.plans);
  const job = usePlans((state) => state.job);
  const { planSeconds, planSeed } = useHost((state) => state.settings);
  const [chosen, choose] = useState<readonly [string, string]>(['', '']);
  const [rounds, setRounds] = useState(1);
  const fleetOf = (id: string, other: number): Fleet | undefined =>
    book.fleets.find((each) => each.id === id) ?? book.fleets[other];
  const [first, second] = [fleetOf(chosen[0], 0), fleetOf(chosen[1], 1)];
  if (first === undefined || second === undefined) return null;
  const options = book.fleets.map(({ id, name }) => ({ value: id, words: name }));
  const [one, other] = [plans[fleetPlanName(round.id, first.id)], plans[fleetPlanName(round.id, second.id)]];
  const whyNot =
    first.id === second.id ? 'Choose two different fleets' : job === null ? null : 'Something is being planned already';
  const plan = () => {
    planFleets({ roundId: round.id, seconds: planSeconds, seed: planSeed, evenUsdPerHour: 0 }, [
      first.id,
      second.id,
    ]).catch(() => undefined);
  };
  return (
    <Section title={`${first.name} against ${second.name}`}>
      <div className="fleet-wishes">
        <Choice label="First fleet" value={first.id} options={options} onChoose={(id) => choose([id, second.id])} />
        <Choice label="Second fleet" value={second.id} options={options} onChoose={(id) => choose([first.id, id])} />
        <span className="inline-field">
          <QuantityInput
            label="Rounds like this one a season"
            kind="whole"
            positive
            value={rounds}
            onCommit={(value) => {
              setRounds(value ?? 1);
              return { ok: true, value: null };
            }}
          />
          <span>{rounds === 1 ? 'round' : 'rounds'} like this a season</span>
        </span>
        <Button look="main" whyNot={whyNot} onPress={plan}>
          <Play size={13} aria-hidden="true" /> Plan both
        </Button>
      </div>
      <p className="quiet small">
        The same lawns, days, hours and prices; each is searched for {counted(planSeconds, 'second')}.
      </p>
      {one !== undefined && other !== undefined && first.id !== second.id && (
        <Figures first={first} second={second} one={one.plan} other={other.plan} rounds={rounds} />
      )}
    </Section>
  );
}

type FiguresProps = {
  readonly first: Fleet;
  readonly second: Fleet;
  /** The plan of each. */
  readonly one: Plan;
  readonly other: Plan;
  readonly rounds: number;
};

/** Summed up once for the two plans, and not again with everything that is told of a planning under way. */
function Figures({ first, second, one, other, rounds }: FiguresProps) {
  const results = useMemo(
    () => [fleetResult(first, one), fleetResult(second, other)] as const,
    [first, second, one, other],
  );
  const comparison = useMemo(() => compareFleets(...results, rounds), [results, rounds]);
  return <FleetFigures comparison={comparison} />;
}
