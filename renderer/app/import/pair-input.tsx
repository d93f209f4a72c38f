import { err, ok, type Result } from '../../../core/base/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { DraftInput, Field } from '../../ui/index.ts';

export type Pair = readonly [number, number];

type PairInputProps = {
  readonly label: string;
  readonly pair: Pair | null;
  readonly most?: Pair;
  readonly onRead: (pair: Pair) => void;
};

/** Two numbers with a comma between them: a point of a drawing, or a place. */
export function PairInput({ label, pair, most, onRead }: PairInputProps) {
  return (
    <Field label={label}>
      <DraftInput
        label={label}
        text={pair === null ? '' : pair.join(', ')}
        onCommit={(text) => {
          const parts = text.split(/[\s,;]+/).map(Number);
          const [first, second] = parts;
          const isPair = parts.length === 2 && parts.every(Number.isFinite);
          if (!isPair || first === undefined || second === undefined) {
            return notRead(importWords.pairInput.numbersWanted, importWords.pairInput.numbersAdvice);
          }
          if (most !== undefined && (Math.abs(first) > most[0] || Math.abs(second) > most[1])) {
            return notRead(importWords.pairInput.placeWanted, importWords.pairInput.placeAdvice);
          }
          onRead([first, second]);
          return ok(text);
        }}
      />
    </Field>
  );
}

/** Why a typed text is not taken. */
export function notRead(what: string, hint: string): Result<never> {
  return err('quantity-unreadable', importWords.pairInput.theImport, importWords.pairInput.isNot(what), hint);
}
