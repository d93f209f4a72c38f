import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Property } from '../../../core/book/index.ts';
import { lastChange } from '../../../core/measure/index.ts';
import { changeProperty, measureOf, useFormat } from '../../stores/index.ts';
import { fieldWorkWords } from '../../texts/ground/index.ts';
import { DraftInput, Field, Section } from '../../ui/index.ts';
import { withOptional } from './zone-edits.ts';

type PastProps = { readonly property: Property };

/** When the lawn was measured, and what it was before. */
export function PastSection({ property }: PastProps) {
  const words = useFormat();
  const past = property.pastMeasures ?? [];
  return (
    <Section title={fieldWorkWords.past.measured}>
      <Field label={fieldWorkWords.past.on}>
        <DraftInput
          label={fieldWorkWords.past.onLabel}
          text={property.measuredOn ?? ''}
          placeholder={fieldWorkWords.past.onPlaceholder}
          onCommit={(text) => changeDate(property, text)}
        />
      </Field>
      <ChangeLine property={property} />
      {past.length > 0 && (
        <ul className="money-lines">
          {past.toReversed().map((each, index) => (
            <li key={`${each.on ?? ''} ${String(index)}`}>
              {each.on ?? fieldWorkWords.past.noDateShort}: {words.area(each.treatableSqFt)}
              {each.errorSqFt === undefined ? '' : ` ± ${words.area(each.errorSqFt)}`}
              {each.how === '' ? '' : `, ${each.how}`}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

/** "before 12,400 ft² on 2025-03-02, now 12,950 ± 300 ft²: +4.4 %, more than the likely error". */
function ChangeLine({ property }: PastProps) {
  const words = useFormat();
  const change = lastChange(property, measureOf(property));
  if (change === null) return null;
  const { past, nowSqFt, nowErrorSqFt, changeShare, verdict } = change;
  const now = nowErrorSqFt === null ? words.area(nowSqFt) : `${words.area(nowSqFt)} ± ${words.area(nowErrorSqFt)}`;
  return (
    <p className="small">
      {fieldWorkWords.past.before(
        words.area(past.treatableSqFt),
        past.on === undefined ? fieldWorkWords.past.undated : fieldWorkWords.past.onDate(past.on),
        now,
      )}{' '}
      <strong>
        {changeShare < 0 ? '-' : '+'}
        {words.number(Math.abs(changeShare) * 100, 1)} %
      </strong>
      , {verdict}.
    </p>
  );
}

function changeDate(property: Property, text: string): Result<unknown> {
  if (text !== '' && !/^\d{4}-\d{2}-\d{2}$/.test(text)) {
    return err('quantity-unreadable', 'date', fieldWorkWords.past.noDate(text), fieldWorkWords.past.noDateAdvice);
  }
  const { measuredOn } = withOptional<Property, 'measuredOn'>(property, 'measuredOn', text === '' ? null : text);
  if (measuredOn === property.measuredOn) return ok(null);
  if (measuredOn !== undefined) return changeProperty(property, { measuredOn }, fieldWorkWords.past.changeDate);
  const { measuredOn: _, ...rest } = property;
  return changeProperty(rest, {}, fieldWorkWords.past.changeDate);
}
