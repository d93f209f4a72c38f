import { err, type Result } from '../../../core/base/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { DraftInput } from '../../ui/index.ts';

type AngleProps = {
  readonly label: string;
  readonly deg: number;
  readonly onType: (deg: number) => Result<unknown>;
};

/** A direction in degrees: "90", "90.5°", "-45". */
export function AngleInput({ label, deg, onType }: AngleProps) {
  return (
    <DraftInput
      label={label}
      align="right"
      inputMode="decimal"
      text={`${tidy(deg)}°`}
      onCommit={(text) => {
        const read = readAngle(text, label);
        return read.ok ? onType(read.value) : read;
      }}
    />
  );
}

function tidy(deg: number): string {
  const rounded = (Math.round(deg * 10) / 10) % 360;
  return String(rounded === 0 ? 0 : rounded);
}

/** Degrees from -360 to 360; the sign ° may be left out. */
export function readAngle(text: string, where: string): Result<number> {
  const found = /^([-+]?\d+(?:\.\d+)?)\s*(?:°|deg|degrees)?$/i.exec(text.trim().replace('−', '-'));
  const value = Number(found?.[1]);
  if (found === null || Math.abs(value) > 360) {
    return err(
      'quantity-unreadable',
      where,
      drawWords.vertexAngle.noDirection(text),
      drawWords.vertexAngle.noDirectionAdvice,
    );
  }
  return { ok: true, value };
}
