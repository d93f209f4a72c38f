import type { BaseIssue } from 'valibot';
import { type AppError, err } from '../base/index.ts';

type SchemaIssue = BaseIssue<unknown>;

/**
 * Turns what the schema found into one error 'wrong-schema': the path of the field in `where`; the field's own name, what was
 * expected and what was found in `detail`; the remedy in `hint`. Further faults are counted.
 */
export function schemaError(issues: readonly [SchemaIssue, ...SchemaIssue[]], where: string): AppError {
  const [first] = issues;
  const place = pathText(first);
  const subject = `${memberText(first)}${recordIds(first)}`;
  const detail = isMissing(first)
    ? `${subject} is missing.`
    : `${subject} should be ${expected(first)}, but is ${received(first)}.`;
  const further = issues.length - 1;
  const more = further === 0 ? '' : ` ${further} more ${further === 1 ? 'fault follows' : 'faults follow'}.`;
  return err('wrong-schema', place === '' ? where : `${where}, ${place}`, detail + more, remedy(first)).error;
}

/** The last member of the path alone, since the whole of it is told by the place: "The member "parking[1]"". */
function memberText(issue: SchemaIssue): string {
  const path = pathText(issue);
  return path === '' ? 'The content' : `The member "${path.slice(path.lastIndexOf('.') + 1)}"`;
}

/** The ids on the way to the fault, for instance ` (record "p-12" / "back")`, since nobody counts to properties[1400]. */
function recordIds(issue: SchemaIssue): string {
  const ids = (issue.path ?? []).flatMap((item) => {
    const value: unknown = item.value;
    const id = typeof value === 'object' && value !== null ? (value as { id?: unknown }).id : undefined;
    return typeof id === 'string' ? [`"${shorten(id)}"`] : [];
  });
  return ids.length === 0 ? '' : ` (record ${ids.join(' / ')})`;
}

/** "properties[3].zones[0].slopeDeg" */
export function pathText(issue: SchemaIssue): string {
  return (issue.path ?? []).reduce((text, item) => {
    if (typeof item.key === 'number') return `${text}[${item.key}]`;
    const key = String(item.key);
    return text === '' ? key : `${text}.${key}`;
  }, '');
}

function expected(issue: SchemaIssue): string {
  const wanted = issue.expected ?? '';
  const requirement = String(issue.requirement);
  switch (issue.type) {
    case 'min_value':
      return `${requirement} or more`;
    case 'max_value':
      return `${requirement} or less`;
    case 'gt_value':
      return `more than ${requirement}`;
    case 'min_length':
      return typeof issue.input === 'string'
        ? `a text of at least ${requirement} characters`
        : `a list of at least ${requirement}`;
    case 'max_length':
      return `a text of at most ${requirement} characters`;
    case 'integer':
      return 'a whole number';
    case 'finite':
      return 'a finite number';
    case 'regex':
      return 'a date such as 2025-03-31';
    default:
      return kindWords(wanted);
  }
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text in quotation marks',
  boolean: 'true or false',
  Array: 'a list in square brackets',
  Object: 'a record in curly brackets',
  '(number | null)': 'a number or null',
};

function kindWords(wanted: string): string {
  const known = KIND_WORDS[wanted];
  if (known !== undefined) return known;
  if (/^\(.* \| .*\)$/.test(wanted)) {
    const choices = wanted
      .slice(1, -1)
      .split(' | ')
      .map((each) => KIND_WORDS[each] ?? each);
    return `one of ${choices.join(', ')}`;
  }
  return wanted;
}

function received(issue: SchemaIssue): string {
  if (issue.type === 'min_length') return `of length ${issue.received}`;
  if (issue.type === 'max_length') return `of length ${issue.received}`;
  if (issue.received === 'Object') return 'a record';
  if (issue.received === 'Array') return 'a list';
  return shorten(issue.received);
}

function shorten(text: string): string {
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}

function remedy(issue: SchemaIssue): string {
  if (isMissing(issue)) return 'Add the missing member; docs/schemas/book.schema.json lists what each record needs.';
  const textForNumber = issue.expected === 'number' && typeof issue.input === 'string';
  if (textForNumber) return 'Write the number without quotation marks and without a unit.';
  if (isOutsideDegrees(issue)) return coordinateRemedy(issue);
  return 'Correct this value; docs/schemas/book.schema.json lists what each member may hold.';
}

const PLACE_MEMBERS = new Set(['coordinates', 'parking', 'at', 'hoseStand']);
const MOST_LONGITUDE = 180;

/** A number of a position beyond what degrees can be. */
function isOutsideDegrees(issue: SchemaIssue): boolean {
  const inPosition = (issue.path ?? []).some((item) => PLACE_MEMBERS.has(String(item.key)));
  return inPosition && (issue.type === 'min_value' || issue.type === 'max_value');
}

/** A latitude that could be a longitude was exchanged with it; anything larger comes from a map grid in feet or metres. */
function coordinateRemedy(issue: SchemaIssue): string {
  const exchanged = typeof issue.input === 'number' && Math.abs(issue.input) <= MOST_LONGITUDE;
  return exchanged
    ? 'Latitude and longitude look exchanged: a position is written as longitude, latitude.'
    : 'These look like projected coordinates in feet or metres: export the ground as longitude, latitude in degrees (WGS84).';
}

function isMissing(issue: SchemaIssue): boolean {
  return issue.received === 'undefined';
}
