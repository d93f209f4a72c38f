import { Plus, X } from 'lucide-react';
import type { Book, Choice, Round } from '../../../../core/book/index.ts';
import { changeRound } from '../../../stores/index.ts';
import { Button, Section } from '../../../ui/index.ts';
import { ChoiceFields } from './choice-fields.tsx';

type RoundZonesProps = { readonly book: Book; readonly round: Round };

/** Treatments that are not for every zone: each may have several choices, of which one has to fit. */
export function RoundZones({ book, round }: RoundZonesProps) {
  const only = round.only ?? [];
  const put = (next: NonNullable<Round['only']>) => changeRound(round, { only: next }, 'Change zones of a treatment');
  return (
    <Section title="Zones">
      {round.treatmentIds.map((treatmentId) => {
        const name = book.treatments.find((each) => each.id === treatmentId)?.name ?? treatmentId;
        const own = only.flatMap((each, index) => (each.treatmentId === treatmentId ? [{ ...each, index }] : []));
        return (
          <details key={treatmentId} className="left-out" open={own.length > 0}>
            <summary>
              {name}: {own.length === 0 ? 'every zone' : own.length === 1 ? 'some zones' : `${own.length} choices`}
            </summary>
            {own.map(({ choice, index }, at) => (
              <div key={index}>
                <ChoiceFields
                  of={`${name}, choice ${at + 1}`}
                  choice={choice}
                  tagged="zones"
                  onChange={(changed: Choice = {}) => put(only.with(index, { treatmentId, choice: changed }))}
                />
                <Button
                  look="quiet"
                  label={`Remove choice ${at + 1} of ${name}`}
                  onPress={() => put(only.toSpliced(index, 1))}
                >
                  <X size={14} aria-hidden="true" /> Remove this choice
                </Button>
              </div>
            ))}
            <Button look="quiet" onPress={() => put([...only, { treatmentId, choice: {} }])}>
              <Plus size={14} aria-hidden="true" /> {own.length === 0 ? 'Only some zones' : 'Or other zones'}
            </Button>
          </details>
        );
      })}
    </Section>
  );
}
