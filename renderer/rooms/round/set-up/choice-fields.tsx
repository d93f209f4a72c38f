import { err, type Result } from '../../../../core/base/index.ts';
import type { Choice } from '../../../../core/book/index.ts';
import { isEmptyChoice } from '../../../../core/round/programme/index.ts';
import { tagsFrom, tagText } from '../../../format/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { setUpWords } from '../../../texts/round/index.ts';
import { DraftInput, Field, QuantityInput } from '../../../ui/index.ts';

type ChoiceFieldsProps = {
  /** Whose choice it is, for spoken names. */
  readonly of: string;
  readonly choice: Choice | undefined;
  /** Whether tags are those of lawns or of zones. */
  readonly tagged: 'lawns' | 'zones';
  /** Undefined where nothing is asked for any more. */
  readonly onChange: (choice: Choice | undefined) => Result<unknown>;
};

/** Which lawns, or which zones of them: by tags, a part of the address and size. */
export function ChoiceFields({ of, choice = {}, tagged, onChange }: ChoiceFieldsProps) {
  const change = (next: Choice): Result<unknown> => onChange(isEmptyChoice(next) ? undefined : next);
  const size = (member: 'leastSqFt' | 'mostSqFt', value: number | null): Result<unknown> => {
    const { [member]: _, ...others } = choice;
    const rest: Choice = others;
    const next: Choice = value === null ? rest : { ...rest, [member]: value };
    const isReversed = (next.leastSqFt ?? 0) > (next.mostSqFt ?? Number.POSITIVE_INFINITY);
    return isReversed
      ? err('quantity-out-of-range', 'size', setUpWords.choice.spanEmpty, setUpWords.choice.spanEmptyAdvice)
      : change(next);
  };
  return (
    <div className="lawn-choice">
      <Field label={setUpWords.choice.tagged} note={setUpWords.choice.taggedNote(tagged)}>
        <DraftInput
          label={setUpWords.choice.taggedOf(of)}
          text={tagText(choice.tags)}
          placeholder={commonWords.any}
          onCommit={(text) => change(withTags(choice, 'tags', text))}
        />
      </Field>
      <Field label={setUpWords.choice.notTagged} note={setUpWords.choice.noneOfThese}>
        <DraftInput
          label={setUpWords.choice.notTaggedOf(of)}
          text={tagText(choice.withoutTags)}
          placeholder={commonWords.any}
          onCommit={(text) => change(withTags(choice, 'withoutTags', text))}
        />
      </Field>
      <Field label={setUpWords.choice.addressHas}>
        <DraftInput
          label={setUpWords.choice.addressHasOf(of)}
          text={choice.address ?? ''}
          placeholder={setUpWords.choice.anything}
          onCommit={(address) => {
            if (address.length > 200) return tooLong();
            const { address: _, ...rest } = choice;
            return change(address === '' ? rest : { ...rest, address });
          }}
        />
      </Field>
      <Field label={setUpWords.choice.atLeast}>
        <QuantityInput
          kind="area"
          label={setUpWords.choice.atLeastOf(of)}
          value={choice.leastSqFt ?? null}
          optional
          onCommit={(value) => size('leastSqFt', value)}
        />
      </Field>
      <Field label={setUpWords.choice.atMost}>
        <QuantityInput
          kind="area"
          label={setUpWords.choice.atMostOf(of)}
          value={choice.mostSqFt ?? null}
          optional
          positive
          onCommit={(value) => size('mostSqFt', value)}
        />
      </Field>
    </div>
  );
}

function tooLong(): Result<never> {
  return err('quantity-out-of-range', 'address', setUpWords.choice.addressTooLong, commonWords.shortenIt);
}

function withTags(choice: Choice, member: 'tags' | 'withoutTags', text: string): Choice {
  const { [member]: _, ...rest } = choice;
  const tags = tagsFrom(text);
  return tags.length === 0 ? rest : { ...rest, [member]: tags };
}
