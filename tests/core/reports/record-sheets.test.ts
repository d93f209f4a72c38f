import { describe, expect, test } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { keepRecord, type Signed, withdrawRecord } from '../../../core/records/index.ts';
import { type DayInput, SHEETS, type Sheet, sheetsHtml, sheetText } from '../../../core/reports/index.ts';
import { DONE, draftOf, recordBook, recordDay, SUBJECT } from '../records/record-book.ts';
import { fixturePlan, propertyInput } from './fixture.ts';

function dayOf(book: Book, day = recordDay()): DayInput {
  const plan: Plan = { ...fixturePlan(), roundId: 'spring', days: [day] };
  return { scope: 'day', book, plan, day };
}

function daySheet(id: string, book: Book, day = recordDay()): Sheet {
  const kind = SHEETS.find((each) => each.id === id);
  if (kind?.scope !== 'day') throw new Error('no sheet of a day');
  return kind.make(dayOf(book, day));
}

function history(book: Book): string {
  const kind = SHEETS.find((each) => each.id === 'record-history');
  if (kind?.scope !== 'property') throw new Error('no sheet of a lawn');
  return sheetText(kind.make(propertyInput('birch', book)));
}

const records = (book: Book): string => sheetText(daySheet('application-records', book));
const FIRST: Signed = { writtenAt: '2027-03-16T17:05', writtenBy: 'Kim Example', why: '' };
const LATER: Signed = { writtenAt: '2027-03-18T08:00', writtenBy: 'Office', why: 'gallons read again' };

function kept(book: Book, signed: Signed): Book {
  const written = keepRecord(book, draftOf(book), signed);
  if (!written.ok) throw new Error(written.error.detail);
  const applied = applyAction(book, written.value.action);
  if (!applied.ok) throw new Error(applied.error.detail);
  return applied.value.book;
}

/** The visit with `more` gallons used in front. */
function usedMore(book: Book, more: number): Book {
  const tasks = DONE.outcome.kind === 'done' ? DONE.outcome.tasks : [];
  const [front, back] = tasks as readonly [(typeof tasks)[0], (typeof tasks)[0]];
  const next = { ...front, usedGal: (front.usedGal ?? 0) + more };
  return { ...book, visits: [{ ...DONE, outcome: { kind: 'done', tasks: [next, back] } }] };
}

describe('the record of a day', () => {
  test('that was done, full', () => {
    expect(records(recordBook())).toMatchSnapshot();
  });

  test('that is still to be filled in has room to write, and names what the book lacks alone', () => {
    const text = records({ ...recordBook([]), applicators: [] });
    expect(text).toContain('To be filled in');
    expect(text).toMatch(/Wind +__________/);
    expect(text).toContain('Came and left: ________');
    expect(text).toMatch(/Total amount +4 fl oz \(as planned\)/);
    const missing = text.slice(text.indexOf('\nMissing'));
    expect(missing).toContain('Certified applicator: who applied');
    expect(missing).not.toMatch(/Wind:|Total amount/);
  });

  test('that was left out says why, or that nobody said', () => {
    const skipped = (reason: string) => recordBook([{ ...DONE, outcome: { kind: 'skipped', reason } }]);
    expect(records(skipped('gate locked'))).toContain('the lawn was left out. gate locked');
    expect(records(skipped(' '))).toContain('No reason is written down.');
  });

  test('that is kept says when, by whom and why, and what is otherwise by now', () => {
    const first = kept(recordBook(), FIRST);
    expect(records(first)).toContain(
      'Kept in the book: version 1, written Tuesday, March 16, 2027, 17:05, by Kim Example.',
    );
    expect(records(first)).not.toContain('say something else');
    const changed = usedMore(first, 1);
    // 17 gal at 0.25 fl oz in a gallon, and 18 gal.
    expect(records(changed).replace(/\s+/g, ' ')).toContain(
      'Total amount of Early 4 4.25 fl oz in the record, 4.5 fl oz now',
    );
    const second = kept(changed, LATER);
    expect(records(second)).toContain('version 2, written Thursday, March 18, 2027, 08:00, by Office.');
    expect(records(second)).toContain('gallons read again');
    const gone = withdrawRecord(second, SUBJECT, { ...LATER, why: 'another lawn' });
    const applied = gone.ok ? applyAction(second, gone.value.action) : gone;
    if (!applied.ok) throw new Error(applied.error.detail);
    expect(records(applied.value.book)).toContain('WITHDRAWN: another lawn');
    expect(history(applied.value.book)).toMatchSnapshot();
  });

  test('has what was done and is not in the plan any more, and the versions of the lawn show it as well', () => {
    const sheet = sheetText(daySheet('application-records', recordBook(), { ...recordDay(), stops: [] }));
    expect(sheet).toContain('Birch house');
    expect(sheet).toContain('4.25 fl oz');
    expect(history(recordBook())).toContain('Not kept yet.');
    expect(history(kept(recordBook(), FIRST))).not.toContain('Not kept yet.');
  });

  test('without stops says so', () => {
    const sheet = daySheet('application-records', recordBook([]), { ...recordDay(), stops: [] });
    expect(sheetText(sheet)).toContain('The day has no stops');
  });
});

describe('notices and signs', () => {
  const template = (text: string, what: 'notice' | 'posting' = 'notice'): Book => ({
    ...recordBook(),
    templates: [{ id: 't', name: 'Text', what, text }],
  });
  const page = (book: Book, id = 'notices'): string =>
    sheetText(daySheet(id, book))
      .split(/={90,}/)[1]
      ?.trim() ?? '';

  test('every field is filled from book, plan and visit', () => {
    const all = `{customer} | {customer-address} | {address} | {date} | {time} | {treatments} | {products} | {registration} | {target} | {reentry} | {area} | {applicator} | {certification} | {firm} | {firm-address} | {phone} | {licence}`;
    expect(page(template(all)).split(' | ')).toEqual([
      'A. Birch',
      '1 Birch Lane, Fairview',
      '1 Birch Lane, Fairview',
      'Tuesday, March 16, 2027',
      '9:00 am',
      'Spring spray',
      'Early 4, Feed 20',
      '0000-00-A',
      'crabgrass',
      'the spray has dried',
      '8,000 ft²',
      'Kim Example',
      'C-1234',
      'Invented Lawns',
      '9 Shop Road',
      '555-0100',
      'B-7',
    ]);
  });

  test('capitals and blanks make no difference; what is not known says so in its place, and at the front', () => {
    expect(page(template('{ DATE }, {Types}'))).toBe('Tuesday, March 16, 2027, [types is missing]');
    expect(sheetText(daySheet('notices', template('{types}')))).toContain('{types} is not known for 1 lawn');
  });

  test('an unknown field stands as it was typed and is named, with those that there are', () => {
    const book = template('Dear {custommer}, {constructor} {__proto__} {} { a {date}');
    expect(page(book)).toBe('Dear {custommer}, {constructor} {__proto__} {} { a Tuesday, March 16, 2027');
    const text = sheetText(daySheet('notices', book));
    expect(text.replace(/\s+/g, ' ')).toContain('"Text" has the field {custommer}, which does not exist');
    expect(text).toContain('{constructor}');
    expect(text).toContain('{customer-address}');
  });

  test('a value that looks like a field is not filled again', () => {
    const base = template('To {customer}');
    const properties = base.properties.map((each) => ({ ...each, customer: { name: '{phone} $& $1' } }));
    expect(page({ ...base, properties })).toBe('To {phone} $& $1');
  });

  test('HTML is text, in the template and in what fills it', () => {
    const base = template('<b>{customer}</b><script>x</script>');
    const properties = base.properties.map((each) => ({ ...each, customer: { name: '<img src=x onerror=y>' } }));
    const html = sheetsHtml([daySheet('notices', { ...base, properties })]);
    expect(html).toContain('&lt;b&gt;&lt;img src=x onerror=y&gt;&lt;/b&gt;&lt;script&gt;');
    expect(html).not.toMatch(/<(script|img|b)\b/);
  });

  test('signs have texts of their own; without any, the sheet says where to write one', () => {
    expect(page(template('KEEP OFF {date}', 'posting'), 'postings')).toBe('KEEP OFF Tuesday, March 16, 2027');
    expect(sheetText(daySheet('notices', template('x', 'posting')))).toContain('no text for a notice yet');
    expect(sheetText(daySheet('postings', recordBook()))).toContain('no text for a sign yet');
  });

  test('a lawn that was left out gets none', () => {
    const skipped = { ...DONE, outcome: { kind: 'skipped' as const, reason: 'dog' } };
    const sheet = daySheet('notices', { ...template('To {customer}'), visits: [skipped] });
    expect(sheetText(sheet)).not.toContain('To A. Birch');
  });

  test('names from right to left, signs and emoji come through whole', () => {
    const base = template('{customer}');
    const name = 'דוד 🌱 <&> "Ö"';
    const properties = base.properties.map((each) => ({ ...each, customer: { name } }));
    expect(page({ ...base, properties })).toBe(name);
    expect(records({ ...base, properties })).toContain(name);
  });
});
