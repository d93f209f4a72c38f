export { asRead, type Reading } from './as-read.ts';
export { formatBearing, parseBearing } from './bearing.ts';
export type * from './brand.ts';
export { quantity } from './brand.ts';
export { addDays, dateInYear, dateOfDay, dayNumber, daysBetween, isCalendarDate } from './calendar.ts';
export * from './constants.ts';
export * from './convert.ts';
export {
  formatArea,
  formatDistance,
  formatLargeArea,
  formatLength,
  formatMoney,
  formatRate,
  formatShare,
  formatSlope,
  formatSpeed,
  formatVolume,
  formatWeight,
  formatWidth,
  type UnitSystem,
} from './format.ts';
export { type DateLength, type DateOrder, formatDate, MONTHS, SHORT_MONTHS } from './format-date.ts';
export { formatNumber } from './format-number.ts';
export {
  formatMeasured,
  formatProductAmount,
  formatProductRate,
  formatWithSmaller,
  type MeasuredUnit,
} from './format-product.ts';
export { type Clock, clockBeside, formatClock, formatDuration } from './format-time.ts';
export { milesCostPerM, NANO_PER_DOLLAR, overtimePerMs, wagePerMs } from './money.ts';
export { formatMonthDay, parseMonthDay } from './month-day.ts';
export {
  type ProductUnit,
  parseArea,
  parseDistance,
  parseFlow,
  parseLength,
  parseProductAmount,
  parseSpeed,
  parseVolume,
  parseWeight,
  parseWidth,
} from './parse.ts';
export { parseCarrierRate, parseMoney, parseProductRate, parseShare, parseSlope } from './parse-rate.ts';
export { parseClock, parseDuration } from './parse-time.ts';
export { decimalComma, type ReadOptions } from './quantity-text.ts';
export {
  celsius,
  fahrenheit,
  formatDegreeDays,
  formatTemperature,
  formatTemperatureDifference,
  parseDegreeDays,
  parseTemperature,
  parseTemperatureDifference,
} from './temperature.ts';
