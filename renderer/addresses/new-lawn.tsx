import { type FormEvent, useId, useState } from 'react';
import { addLawnAt } from '../stores/index.ts';
import { addressesWords } from '../texts/index.ts';
import { Section } from '../ui/index.ts';

/** A new lawn where its address is. */
export function NewLawn() {
  const [text, setText] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const faultId = useId();
  const add = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() === '') return;
    addLawnAt(text.trim()).then(
      (answer) => {
        if (answer?.kind === 'not-placed') setFault(answer.reason);
      },
      () => undefined,
    );
  };
  return (
    <Section title={addressesWords.newLawn.title}>
      <form className="new-lawn" onSubmit={add}>
        <input
          className="input"
          aria-label={addressesWords.newLawn.label}
          aria-invalid={fault === null ? undefined : true}
          aria-describedby={fault === null ? undefined : faultId}
          placeholder={addressesWords.newLawn.placeholder}
          autoComplete="off"
          value={text}
          onChange={(event) => {
            setText(event.target.value);
            setFault(null);
          }}
        />
        <button type="submit" className="button button-plain">
          {addressesWords.newLawn.add}
        </button>
      </form>
      {fault !== null && (
        <p id={faultId} className="fault" role="alert">
          {fault}
        </p>
      )}
    </Section>
  );
}
