import { type ReactNode, useId } from 'react';

type SectionProps = {
  readonly title: string;
  readonly children: ReactNode;
  /** Beside the title: a count, a button. */
  readonly aside?: ReactNode;
};

/** A titled part of a panel. */
export function Section({ title, children, aside }: SectionProps) {
  const id = useId();
  return (
    <section className="section" aria-labelledby={id}>
      <header className="section-head">
        <h3 id={id}>{title}</h3>
        {aside}
      </header>
      {children}
    </section>
  );
}

type FieldProps = { readonly label: string; readonly children: ReactNode; readonly note?: string };

/** A label with its input. The input carries the same words as its own spoken name. */
export function Field({ label, children, note }: FieldProps) {
  return (
    <div className="field">
      <span className="field-label" aria-hidden="true">
        {label}
      </span>
      <div className="field-body">
        {children}
        {note !== undefined && <span className="field-note">{note}</span>}
      </div>
    </div>
  );
}

type EmptyProps = { readonly title: string; readonly children: ReactNode; readonly actions?: ReactNode };

/** What a room says when there is nothing in it yet. */
export function Empty({ title, children, actions }: EmptyProps) {
  return (
    <div className="empty">
      <h2>{title}</h2>
      <p className="quiet">{children}</p>
      {actions !== undefined && <div className="empty-actions">{actions}</div>}
    </div>
  );
}
