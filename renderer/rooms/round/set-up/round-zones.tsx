import { Plus, X } from 'lucide-react';
import type { Book, Choice, Round } from '../../../../core/book/index.ts';
import { changeRound } from '../../../stores/index.ts';
import { setUpWords } from '../../../texts/round/index.ts';
import { Button, Section } from '../../../ui/index.ts';
import { ChoiceFields } from './choice-fields.tsx';

type RoundZonesProps = { readonly book: Book; readonly round: Round };

/** Treatments that are not for every zone: each may have several choices, of which one has to fit. */
export function RoundZones({ book, round }: RoundZonesProps) {
  const only = round.only ?? [];
  const put = (next: NonNullable<Round['only']>) => changeRound(round, { only: next }, setUpWords.zones.change);
  return (
    <Section title={setUpWords.zones.zones}>
      {round.treatmentIds.map((treatmentId) => {
        const name = book.treatments.find((each) => each.id === treatmentId)?.name ?? treatmentId;
        const own = only.flatMap((each, index) => (each.treatmentId === treatmentId ? [{ ...each, index }] : []));
        return (
          <details key={treatmentId} className="left-out" open={own.length > 0}>
            <summary>
              {name}:{' '}
              {own.length === 0
                ? setUpWords.zones.every
                : own.length === 1
                  ? setUpWords.zones.some
                  : setUpWords.zones.choices(own.length)}
            </summary>
            {own.map(({ choice, index }, at) => (
              <div key={index}>
                <ChoiceFields
                  of={setUpWords.zones.choiceOf(name, at + 1)}
                  choice={choice}
                  tagged={setUpWords.zones.what}
                  onChange={(changed: Choice = {}) => put(only.with(index, { treatmentId, choice: changed }))}
                />
                <Button
                  look="quiet"
                  label={setUpWords.zones.removeChoiceOf(at + 1, name)}
                  onPress={() => put(only.toSpliced(index, 1))}
                >
                  <X size={14} aria-hidden="true" /> {setUpWords.zones.removeChoice}
                </Button>
              </div>
            ))}
            <Button look="quiet" onPress={() => put([...only, { treatmentId, choice: {} }])}>
              <Plus size={14} aria-hidden="true" />{' '}
              {own.length === 0 ? setUpWords.zones.onlySome : setUpWords.zones.others}
            </Button>
          </details>
        );
      })}
    </Section>
  );
}
