import { type KeyboardEvent, useId, useRef, useState } from 'react';
import type { Result } from '../../core/base/index.ts';

/** Takes what was typed; drops it. */
export const TEXT_KEYS = ['Enter', 'Escape'] as const;

export type DraftInputProps = {
  /** Spoken name; shown by the field around it. */
  readonly label: string;
  /** What is shown while nobody types. */
  readonly text: string;
  /** Takes the typed text; a failure is shown under the field and the text stays. */
  readonly onCommit: (text: string) => Result<unknown>;
  readonly align?: 'left' | 'right';
  readonly id?: string;
  readonly placeholder?: string;
  readonly inputMode?: 'text' | 'decimal';
};

/**
 * A text input with its own draft: Enter or leaving takes the text, Escape puts the old one back, a text that cannot be read stays
 * with the reason below it.
 */
export function DraftInput({ label, text, onCommit, align = 'left', id, placeholder, inputMode }: DraftInputProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const skipBlur = useRef(false);
  const faultId = useId();

  const drop = () => {
    setDraft(null);
    setFault(null);
  };
  const commit = () => {
    if (draft === null) return;
    if (draft.trim() === text.trim()) return drop();
    const taken = onCommit(draft.trim());
    if (taken.ok) return drop();
    setFault(`${taken.error.detail} ${taken.error.hint}`);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') commit();
    if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      skipBlur.current = true;
      drop();
    }
  };
  return (
    <span className="draft">
      <input
        id={id}
        className={`input input-${align}`}
        aria-label={label}
        aria-invalid={fault === null ? undefined : true}
        aria-describedby={fault === null ? undefined : faultId}
        autoComplete="off"
        spellCheck={false}
        inputMode={inputMode}
        data-draft={draft === null ? undefined : true}
        placeholder={placeholder}
        value={draft ?? text}
        onChange={(event) => {
          skipBlur.current = false;
          setDraft(event.target.value);
          setFault(null);
        }}
        onKeyDown={onKeyDown}
        onBlur={() => {
          if (!skipBlur.current) commit();
          skipBlur.current = false;
        }}
      />
      {fault !== null && (
        <span id={faultId} className="fault" role="alert">
          {fault}
        </span>
      )}
    </span>
  );
}
