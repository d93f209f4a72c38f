import { X } from 'lucide-react';
import { err } from '../../../../core/base/index.ts';
import type { Book, Property, Round } from '../../../../core/book/index.ts';
import type { LeftOut } from '../../../../core/round/programme/index.ts';
import { changeRound, selectProperty, useFormat, useSelection } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { setUpWords } from '../../../texts/round/index.ts';
import { Button, Choice, DraftInput, Field } from '../../../ui/index.ts';
import { withPromise } from '../round-edits.ts';

type LawnInRoundProps = {
  readonly book: Book;
  readonly round: Round;
  readonly taken: readonly Property[];
  readonly left: readonly LeftOut[];
};

/** The lawn that is selected, as the round has it: left out by hand or not, and the day that it is promised. */
export function LawnInRound({ book, round, taken, left }: LawnInRoundProps) {
  const propertyId = useSelection((state) => state.propertyId);
  const property = book.properties.find((each) => each.id === propertyId);
  return (
    <>
      {property === undefined ? (
        <p className="quiet small">{setUpWords.lawn.noneSelected}</p>
      ) : (
        <Lawn
          key={property.id}
          round={round}
          property={property}
          why={taken.includes(property) ? null : (left.find((each) => each.property === property)?.words ?? '')}
        />
      )}
      <Promises book={book} round={round} />
    </>
  );
}

type LawnProps = { readonly round: Round; readonly property: Property; readonly why: string | null };

function Lawn({ round, property, why }: LawnProps) {
  const words = useFormat();
  const promised = round.promised?.find((each) => each.propertyId === property.id)?.on ?? '';
  const skipped = round.skipped.find((each) => each.propertyId === property.id);
  const rest = round.skipped.filter((each) => each.propertyId !== property.id);
  const dates = [...new Set([...round.dates, ...(promised === '' ? [] : [promised])])].toSorted();
  return (
    <fieldset className="lawn-in-round">
      <legend className="strong">{property.name}</legend>
      <p className="small">{why === null ? setUpWords.lawn.inRound : setUpWords.lawn.leftOut(words.said(why))}</p>
      {why === null && (
        <Field label={setUpWords.lawn.promisedFor}>
          <Choice
            label={setUpWords.lawn.promisedDayOf(property.name)}
            value={promised}
            options={[
              { value: '', words: setUpWords.lawn.noDay },
              ...dates.map((value) => ({ value, words: `${words.date(value)} ${value.slice(0, 4)}` })),
            ]}
            onChoose={(on) => {
              const next = withPromise(round, property, on === '' ? null : on);
              changeRound(
                round,
                { promised: next },
                on === '' ? setUpWords.lawn.takePromiseBack : setUpWords.lawn.promiseADay,
              );
            }}
          />
        </Field>
      )}
      {skipped === undefined ? (
        why === null && (
          <Field label={setUpWords.lawn.leaveOut} note={setUpWords.lawn.reasonNote}>
            <DraftInput
              label={setUpWords.lawn.reasonOf(property.name)}
              text=""
              onCommit={(reason) => {
                if (reason.length > 4000)
                  return err('quantity-out-of-range', 'reason', setUpWords.lawn.reasonTooLong, commonWords.shortenIt);
                const next = [...rest, { propertyId: property.id, reason }];
                return changeRound(round, { skipped: next }, setUpWords.lawn.changeLeftOut);
              }}
            />
          </Field>
        )
      ) : (
        <Button onPress={() => changeRound(round, { skipped: rest }, setUpWords.lawn.changeTakenIn)}>
          {setUpWords.lawn.takeInAgain}
        </Button>
      )}
    </fieldset>
  );
}

function Promises({ book, round }: { readonly book: Book; readonly round: Round }) {
  const words = useFormat();
  const promised = (round.promised ?? []).toSorted((one, other) => (one.on < other.on ? -1 : 1));
  if (promised.length === 0) return null;
  return (
    <div className="left-out">
      <p className="small strong">{setUpWords.lawn.promisedDays}</p>
      <ul className="promises">
        {promised.map(({ propertyId, on }) => {
          const property = book.properties.find((each) => each.id === propertyId);
          const name = property?.name ?? propertyId;
          return (
            <li key={`${propertyId} ${on}`}>
              <button type="button" className="row-button" onClick={() => selectProperty(propertyId)}>
                {words.date(on)}: {name}
              </button>
              <Button
                look="quiet"
                label={setUpWords.lawn.takePromiseBackOf(name)}
                onPress={() => {
                  const next = promised.filter((each) => each.propertyId !== propertyId || each.on !== on);
                  changeRound(round, { promised: next }, setUpWords.lawn.takePromiseBack);
                }}
              >
                <X size={14} aria-hidden="true" />
              </Button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
