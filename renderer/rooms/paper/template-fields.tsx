import { Plus, Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { Book, Template } from '../../../core/book/index.ts';
import { FIELD_NAMES } from '../../../core/reports/index.ts';
import { freshId, putRecord, removeRecord, showError } from '../../stores/index.ts';
import { commonWords, paperWords } from '../../texts/index.ts';
import { Button, DraftInput, Field, Section } from '../../ui/index.ts';

type TemplatesProps = { readonly book: Book; readonly what: Template['what'] };

/** The user's own texts for notices or signs. The program has none: what has to stand in them is for local rules to say. */
export function TemplateFields({ book, what }: TemplatesProps) {
  const own = book.templates.filter((each) => each.what === what);
  const add = () => {
    const id = freshId(book.templates, what);
    const name = what === 'notice' ? paperWords.template.notice : paperWords.template.sign;
    const done = putRecord('templates', { id, name, what, text: '' }, paperWords.template.added(name.toLowerCase()));
    if (!done.ok) showError(done.error);
  };
  return (
    <Section
      title={paperWords.template.title}
      aside={
        <Button look="quiet" label={paperWords.template.add} tip={paperWords.template.add} onPress={add}>
          <Plus size={15} aria-hidden="true" />
        </Button>
      }
    >
      {own.length === 0 && <p className="quiet small">{paperWords.template.noneYet}</p>}
      {own.map((template) => (
        <TemplateForm key={template.id} template={template} />
      ))}
      <details className="left-out">
        <summary>{paperWords.template.fields}</summary>
        <p className="small">{FIELD_NAMES.map((name) => `{${name}}`).join(' ')}</p>
      </details>
    </Section>
  );
}

function TemplateForm({ template }: { readonly template: Template }) {
  const put = (changes: Partial<Template>) =>
    putRecord('templates', { ...template, ...changes }, paperWords.template.changeText);
  return (
    <div className="own-text-form">
      <Field label={commonWords.name}>
        <DraftInput
          label={paperWords.template.nameOf(template.name)}
          text={template.name}
          onCommit={(name) => put({ name })}
        />
      </Field>
      <OwnText
        label={paperWords.template.textOf(template.name)}
        text={template.text}
        onCommit={(text) => {
          const done = put({ text });
          if (!done.ok) showError(done.error);
        }}
      />
      <Button look="danger" onPress={() => removeRecord('templates', template.id, template.name)}>
        <Trash2 size={14} aria-hidden="true" /> {commonWords.remove}
      </Button>
    </div>
  );
}

type OwnTextProps = { readonly label: string; readonly text: string; readonly onCommit: (text: string) => void };

/** Several lines; leaving the box takes them, Escape puts the old ones back. */
function OwnText({ label, text, onCommit }: OwnTextProps) {
  const [draft, setDraft] = useState<string | null>(null);
  return (
    <textarea
      className="input own-text-box"
      aria-label={label}
      rows={10}
      maxLength={4000}
      value={draft ?? text}
      onChange={(event) => setDraft(event.target.value)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || draft === null) return;
        event.stopPropagation();
        setDraft(null);
      }}
      onBlur={() => {
        if (draft !== null && draft !== text) onCommit(draft);
        setDraft(null);
      }}
    />
  );
}
