import { showError } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { setUpWords } from '../../../texts/round/index.ts';
import { Tick } from '../../../ui/index.ts';
import { withMember } from '../round-edits.ts';

type MembersProps = {
  readonly all: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
};

/** Ticks for what takes part; the last one cannot be taken out. */
export function Members({ all, chosen, onChange }: MembersProps) {
  return (
    <div className="ticks ticks-one">
      {all.map(({ id, name }) => (
        <Tick
          key={id}
          label={name}
          checked={chosen.includes(id)}
          onChange={(on) => {
            const next = withMember(chosen, id, on);
            if (next.length === 0) {
              showError({
                code: 'nothing-to-do',
                where: commonWords.round,
                detail: setUpWords.members.oneNeeded,
                hint: commonWords.tickAnother,
              });
            } else onChange(next);
          }}
        />
      ))}
    </div>
  );
}
