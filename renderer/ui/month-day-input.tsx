import type { Result } from '../../core/base/index.ts';
import { formatMonthDay, parseMonthDay } from '../../core/units/index.ts';
import { useFormat } from '../stores/index.ts';
import { uiWords } from '../texts/index.ts';
import { DraftInput } from './draft-input.tsx';

type MonthDayInputProps = {
  readonly label: string;
  /** MM-DD; null where nothing is set. */
  readonly value: string | null;
  /** Where true an empty text takes the day away; else it is a fault. */
  readonly optional?: boolean;
  readonly onCommit: (value: string | null) => Result<unknown>;
};

/** A day of any year, typed as people write it: "15 Feb", "February 15". */
export function MonthDayInput({ label, value, optional = false, onCommit }: MonthDayInputProps) {
  const { dates } = useFormat();
  const commit = (text: string): Result<unknown> => {
    if (text === '' && optional) return onCommit(null);
    const read = parseMonthDay(text, label, dates);
    return read.ok ? onCommit(read.value) : read;
  };
  return (
    <DraftInput
      label={label}
      align="right"
      text={value === null ? '' : formatMonthDay(value, dates)}
      placeholder={optional ? uiWords.monthDayInput.notSet : uiWords.monthDayInput.dayAndMonth}
      onCommit={commit}
    />
  );
}
