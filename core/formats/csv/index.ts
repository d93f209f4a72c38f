export { type DateGuess, type DateOrder, guessDateOrder, readDate } from './dates.ts';
export type { DegreeUnit, UnitGuess } from './degree-figures.ts';
export { harmlessCell } from './formula-cell.ts';
export { looksLikeTimes, previewMatrix } from './matrix.ts';
export { csvReader } from './source.ts';
export { readTable, type Table } from './table.ts';
export {
  guessTemperatureColumns,
  guessTemperatures,
  looksLikeTemperatures,
  type TemperatureColumns,
  type TemperatureGuess,
} from './temperature-columns.ts';
export { readTemperatureTable } from './temperature-table.ts';
export {
  readTemperatures,
  type TemperatureAnswers,
  type TemperatureDay,
  type TemperatureReading,
} from './temperatures.ts';
export { readWeather, type WeatherAnswers, type WeatherHours, type WeatherReading } from './weather.ts';
export {
  guessWeather,
  guessWeatherColumns,
  looksLikeWeather,
  RAIN_UNITS,
  type RainUnit,
  type WeatherColumns,
  type WeatherGuess,
  WIND_UNITS,
  type WindUnit,
} from './weather-columns.ts';
