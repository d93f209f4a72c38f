import { ok } from '../../../../core/base/index.ts';
import { readEngineAddress } from '../../../../core/travel/engines/index.ts';
import { setRoadEngine, useRoadEngine } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { roadsWords } from '../../../texts/shed/index.ts';
import { Choice, DraftInput, Field, Section } from '../../../ui/index.ts';

const KINDS = [
  { value: 'none', words: commonWords.none },
  { value: 'osrm', words: roadsWords.engine.osrm },
  { value: 'valhalla', words: roadsWords.engine.valhalla },
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
    <Section title={roadsWords.engine.title}>
      <p className="quiet small">{roadsWords.engine.about}</p>
      <div className="fields">
        <Field label={commonWords.kind}>
          <Choice
            label={roadsWords.engine.kindLabel}
            value={kind}
            options={KINDS}
            onChoose={(next) => {
              setRoadEngine(next, address).catch(() => undefined);
            }}
          />
        </Field>
        <Field label={roadsWords.engine.address}>
          <DraftInput
            label={roadsWords.engine.addressLabel}
            text={address}
            placeholder={roadsWords.engine.addressPlaceholder}
            onCommit={take}
          />
        </Field>
      </div>
    </Section>
  );
}
