import { ok } from '../../../../core/base/index.ts';
import { readEngineAddress } from '../../../../core/travel/engines/index.ts';
import { setRoadEngine, useRoadEngine } from '../../../stores/index.ts';
import { Choice, DraftInput, Field, Section } from '../../../ui/index.ts';

const KINDS = [
  { value: 'none', words: 'none' },
  { value: 'osrm', words: 'OSRM, API v1' },
  { value: 'valhalla', words: 'Valhalla' },
] as const;

/** A table service that the user runs. Nothing is asked of any machine before its address is entered here. */
export function RoadEngine() {
  const { kind, address } = useRoadEngine();
  const take = (text: string) => {
    if (text === '') {
      setRoadEngine('none', '').catch(() => undefined);
      return ok(true);
    }
    const read = readEngineAddress(text);
    if (!read.ok) return read;
    setRoadEngine(kind === 'none' ? 'osrm' : kind, read.value).catch(() => undefined);
    return read;
  };
  return (
    <Section title="A table service of your own">
      <p className="quiet small">
        Instead of the roads beside the book, a program that you run can be asked for drive times. The positions of your
        lawns, and nothing else, are sent to the address below, so let it be a machine of yours. It is a setting of this
        computer and goes into no book.
      </p>
      <div className="fields">
        <Field label="kind">
          <Choice
            label="Kind of table service"
            value={kind}
            options={KINDS}
            onChoose={(next) => {
              setRoadEngine(next, address).catch(() => undefined);
            }}
          />
        </Field>
        <Field label="address">
          <DraftInput
            label="Address of the table service"
            text={address}
            placeholder="http://127.0.0.1:5000"
            onCommit={take}
          />
        </Field>
      </div>
    </Section>
  );
}
