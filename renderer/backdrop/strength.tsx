import { useEffect, useState } from 'react';
import { backdropWords } from '../texts/index.ts';

type StrengthProps = {
  readonly label: string;
  /** 0 to 1. */
  readonly value: number;
  /** Told when the slider comes to rest. */
  readonly onCommit: (value: number) => void;
};

const REST_MS = 200;

/** How strongly something shows, in percent. A slide is one change: it is told when the hand rests. */
export function Strength({ label, value, onCommit }: StrengthProps) {
  const [draft, setDraft] = useState<number | null>(null);
  useEffect(() => {
    if (draft === null) return undefined;
    const timer = setTimeout(() => {
      onCommit(draft);
      setDraft(null);
    }, REST_MS);
    return () => clearTimeout(timer);
  }, [draft, onCommit]);
  const shown = Math.round((draft ?? value) * 100);
  return (
    <label className="strength">
      <span className="small">{label}</span>
      <input
        type="range"
        min={0}
        max={100}
        step={5}
        value={shown}
        aria-valuetext={backdropWords.strength.percent(shown)}
        onChange={(event) => setDraft(Number(event.target.value) / 100)}
      />
      <span className="small strength-figure">{shown} %</span>
    </label>
  );
}
