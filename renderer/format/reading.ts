import type { Settings } from '../../core/contract/index.ts';
import type { Reading } from '../../core/units/index.ts';

/** A moment whose date and time no order of figures makes another one of. */
const EXAMPLE = new Date(Date.UTC(2027, 2, 16, 12));

/** The clock and the order of dates of the system that the window runs on, by its locale. */
function systemReading(locale: string | undefined): Pick<Reading, 'clock' | 'dates'> {
  const { hour12 } = new Intl.DateTimeFormat(locale, { hour: 'numeric' }).resolvedOptions();
  const parts = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long' }).formatToParts(EXAMPLE);
  const place = (type: 'day' | 'month'): number => parts.findIndex((part) => part.type === type);
  return {
    clock: hour12 === false ? '24-hour' : '12-hour',
    dates: place('day') < place('month') ? 'day-first' : 'month-first',
  };
}

/** How figures are read by these settings; what they leave to the system goes by its locale. */
export function readingBy(
  { units, clock, dates }: Pick<Settings, 'units' | 'clock' | 'dates'>,
  locale?: string,
): Reading {
  const system = systemReading(locale);
  return { units, clock: clock === 'system' ? system.clock : clock, dates: dates === 'system' ? system.dates : dates };
}

export type WeekBegin = 'sunday' | 'monday';

/** The part of a locale that knows where its weeks begin: 1 for Monday, 7 for Sunday; newer and older browsers name it unlike. */
type LocaleWithWeeks = Intl.Locale & {
  readonly weekInfo?: { readonly firstDay: number };
  readonly getWeekInfo?: () => { readonly firstDay: number };
};

/** The first day of the week by this setting, or by the locale of the system; a Saturday there counts as the Sunday after it. */
export function weekBeginBy(setting: Settings['weekBegin'], language = systemLanguage()): WeekBegin {
  if (setting !== 'system') return setting;
  const locale: LocaleWithWeeks = new Intl.Locale(language);
  const info = locale.getWeekInfo?.() ?? locale.weekInfo;
  return info?.firstDay === 1 ? 'monday' : 'sunday';
}

function systemLanguage(): string {
  return new Intl.DateTimeFormat().resolvedOptions().locale;
}
