import type { ReactNode } from 'react';

export type ButtonLook = 'plain' | 'main' | 'quiet' | 'danger';

type ButtonProps = {
  readonly children: ReactNode;
  readonly onPress: () => void;
  readonly look?: ButtonLook;
  /** Spoken name where the button shows no words. */
  readonly label?: string;
  readonly tip?: string;
  /** Why it cannot be used now. The button stays in the tab order, so that the reason can be read. */
  readonly whyNot?: string | null;
  readonly pressed?: boolean;
};

/** A button that explains itself: where it cannot be used it says why instead of going away. */
export function Button({ children, onPress, look = 'plain', label, tip, whyNot = null, pressed }: ButtonProps) {
  return (
    <button
      type="button"
      className={`button button-${look}`}
      aria-label={label}
      aria-disabled={whyNot === null ? undefined : true}
      aria-pressed={pressed}
      title={whyNot ?? tip}
      onClick={whyNot === null ? onPress : undefined}
    >
      {children}
    </button>
  );
}
