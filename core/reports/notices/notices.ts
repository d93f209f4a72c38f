import type { Template } from '../../book/index.ts';
import { draftRecord } from '../../records/index.ts';
import type { Block, Sheet } from '../blocks.ts';
import type { DayInput } from '../input.ts';
import { NOTICES } from '../texts/index.ts';
import { dateWord } from '../words.ts';
import { FIELD_NAMES } from './fields.ts';
import { type FilledText, fillText } from './fill.ts';

/** The user's own notice for every lawn of a rig's day, a page for each. */
export function notices(input: DayInput): Sheet {
  return sheetOf(input, 'notice');
}

/** The user's own sign for every lawn of a rig's day, a page for each. */
export function postings(input: DayInput): Sheet {
  return sheetOf(input, 'posting');
}

type Filled = { readonly template: Template; readonly filled: FilledText };

function sheetOf(input: DayInput, what: Template['what']): Sheet {
  const { book, plan, day } = input;
  const templates = book.templates.filter((each) => each.what === what);
  const pages = templates.flatMap((template) => pagesOf(input, template));
  const none = templates.length === 0 ? NOTICES.none[what] : pages.length === 0 ? NOTICES.noStops : null;
  return {
    id: `${what === 'notice' ? 'notices' : 'postings'} ${day.date} ${day.rigId}`,
    title: `${NOTICES.title[what]}: ${day.rigName}`,
    subtitle: dateWord(book, day.date),
    invented: book.invented || plan.invented,
    blocks: [
      ...(none === null ? [] : [{ kind: 'note' as const, text: none }]),
      { kind: 'cautions', title: NOTICES.mind.title, items: mindOf(pages) },
      ...pages.map(({ filled }): Block => {
        const look = what === 'notice' ? 'letter' : 'sign';
        return { kind: 'page', blocks: [{ kind: 'own-text', look, text: filled.text }] };
      }),
    ],
  };
}

/** Lawns that were left out get none. */
function pagesOf({ book, plan, day }: DayInput, template: Template): readonly Filled[] {
  return day.stops.flatMap((stop) => {
    const subject = { propertyId: stop.propertyId, on: day.date, roundId: plan.roundId, rigId: day.rigId };
    const draft = draftRecord(book, subject, day);
    return draft === null ? [] : [{ template, filled: fillText(template.text, { book, draft, stop }) }];
  });
}

function mindOf(pages: readonly Filled[]): readonly string[] {
  const unknown = new Map<string, string>();
  const missing = new Map<string, number>();
  for (const { template, filled } of pages) {
    for (const field of filled.unknown)
      unknown.set(
        `${template.id} ${field}`,
        NOTICES.mind.unknown(template.name, field, FIELD_NAMES.map((name) => `{${name}}`).join(' ')),
      );
    for (const field of filled.missing) missing.set(field, (missing.get(field) ?? 0) + 1);
  }
  return [
    NOTICES.mind.local,
    ...unknown.values(),
    ...[...missing].map(([field, count]) => NOTICES.mind.missing(field, count)),
  ];
}
