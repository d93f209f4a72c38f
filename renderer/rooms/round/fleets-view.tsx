import { Play, Plus, Trash2 } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Book, Fleet, Round } from '../../../core/book/index.ts';
import { compareFleets, fleetPlanName, fleetResult } from '../../../core/compare/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { CommandButton, useOffer } from '../../commands/index.ts';
import { NotYet } from '../../next/index.ts';
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
import { commonWords } from '../../texts/index.ts';
import { fleetsWords } from '../../texts/round/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { FleetFigures } from './fleet-figures.tsx';
import { withMember } from './round-edits.ts';

/** Two fleets on the same round, side by side: how an owner chooses a machine. */
export function FleetsView() {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  if (book === null) return null;
  if (round === null || book.rigs.length === 0)
    return (
      <NotYet title={fleetsWords.view.nothingYet} needs="round">
        {fleetsWords.view.nothingYetAdvice}
      </NotYet>
    );
  return (
    <div className="ledger">
      <header className="season-head">
        <h2>{fleetsWords.view.title(round.name)}</h2>
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
    const name = book.fleets.length === 0 ? fleetsWords.view.asItIs : fleetsWords.view.newName(book.fleets.length + 1);
    const done = putRecord('fleets', { id, name, rigIds, fixedPerSeason: 0, note: '' }, fleetsWords.view.addFleet);
    if (!done.ok) showError(done.error);
  };
  return (
    <Section
      title={fleetsWords.view.fleets}
      aside={
        <Button look="quiet" label={fleetsWords.view.addAFleet} tip={fleetsWords.view.addAFleet} onPress={add}>
          <Plus size={15} aria-hidden="true" />
        </Button>
      }
    >
      {book.fleets.length < 2 && <p className="quiet">{fleetsWords.view.about}</p>}
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
      <Field label={commonWords.name}>
        <DraftInput
          label={fleetsWords.view.nameOf}
          text={fleet.name}
          onCommit={(name) => change({ name }, commonWords.changeName)}
        />
      </Field>
      <div className="ticks ticks-one">
        {book.rigs.map((rig) => (
          <Tick
            key={rig.id}
            label={rig.name}
            checked={fleet.rigIds.includes(rig.id)}
            onChange={(on) => {
              const rigIds = withMember(fleet.rigIds, rig.id, on);
              if (rigIds.length > 0) change({ rigIds: [...rigIds] }, fleetsWords.view.changeRigs);
              else
                showError({
                  code: 'nothing-to-do',
                  where: fleetsWords.view.place(fleet.name),
                  detail: fleetsWords.view.oneRigNeeded,
                  hint: commonWords.tickAnother,
                });
            }}
          />
        ))}
      </div>
      <Field label={fleetsWords.view.fixedCost}>
        <QuantityInput
          label={fleetsWords.view.fixedCostOf(fleet.name)}
          kind="money"
          value={fleet.fixedPerSeason}
          onCommit={(value) => change({ fixedPerSeason: value ?? 0 }, fleetsWords.view.changeFixedCost)}
        />
      </Field>
      <Button look="danger" onPress={() => removeRecord('fleets', fleet.id, fleet.name)}>
        <Trash2 size={14} aria-hidden="true" /> {commonWords.remove}
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
    first.id === second.id ? fleetsWords.view.chooseTwo : job === null ? null : fleetsWords.view.alreadyPlanning;
  const plan = () => {
    planFleets({ roundId: round.id, seconds: planSeconds, seed: planSeed, evenUsdPerHour: 0 }, [
      first.id,
      second.id,
    ]).catch(() => undefined);
  };
  return (
    <Section title={fleetsWords.view.against(first.name, second.name)}>
      <div className="fleet-wishes">
        <Choice
          label={fleetsWords.view.firstFleet}
          value={first.id}
          options={options}
          onChoose={(id) => choose([id, second.id])}
        />
        <Choice
          label={fleetsWords.view.secondFleet}
          value={second.id}
          options={options}
          onChoose={(id) => choose([first.id, id])}
        />
        <span className="inline-field">
          <QuantityInput
            label={fleetsWords.view.roundsInSeason}
            kind="whole"
            positive
            value={rounds}
            onCommit={(value) => {
              setRounds(value ?? 1);
              return { ok: true, value: null };
            }}
          />
          <span>{fleetsWords.view.likeThis(rounds)}</span>
        </span>
        <FleetPlanning whyNot={whyNot} plan={plan} />
      </div>
      <p className="quiet small">{fleetsWords.view.note(planSeconds)}</p>
      {one !== undefined && other !== undefined && first.id !== second.id && (
        <Figures first={first} second={second} one={one.plan} other={other.plan} rounds={rounds} />
      )}
    </Section>
  );
}

/** Plans the round by both fleets. */
function FleetPlanning({ whyNot, plan }: { readonly whyNot: string | null; readonly plan: () => void }) {
  useOffer('round.plan-fleets', { whyNot, run: plan });
  return (
    <CommandButton id="round.plan-fleets" look="main">
      <Play size={13} aria-hidden="true" /> {fleetsWords.view.planBoth}
    </CommandButton>
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
