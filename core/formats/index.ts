export {
  type DateGuess,
  type DateOrder,
  type DegreeUnit,
  guessDateOrder,
  guessTemperatureColumns,
  guessTemperatures,
  guessWeather,
  guessWeatherColumns,
  looksLikeTemperatures,
  looksLikeTimes,
  looksLikeWeather,
  previewMatrix,
  RAIN_UNITS,
  type RainUnit,
  readDate,
  readTable,
  readTemperatures,
  readTemperatureTable,
  readWeather,
  type Table,
  type TemperatureAnswers,
  type TemperatureColumns,
  type TemperatureDay,
  type TemperatureGuess,
  type TemperatureReading,
  type UnitGuess,
  type WeatherAnswers,
  type WeatherColumns,
  type WeatherGuess,
  type WeatherHours,
  type WeatherReading,
  WIND_UNITS,
  type WindUnit,
} from './csv/index.ts';
export {
  type GroundWriter,
  PLAN_WRITERS,
  type PlanFileWriter,
  type PlanSource,
  type PlanWriteOptions,
  WRITERS,
  type WriteOptions,
  writeBuyingTable,
  writeCostTable,
  writeLedgerTable,
  writeRecordsTable,
} from './export/index.ts';
export {
  assumedParking,
  geojsonReader,
  type MeasuredFile,
  type MeasuredProperty,
  type MeasuredZone,
  type MeasureProperty,
  measuredFromBook,
  measureGeojson,
} from './geojson/index.ts';
export { geopackageReader } from './geopackage/index.ts';
export { findGroundReader, GROUND_READERS } from './ground-readers.ts';
export { GROUND_READ_OPTIONS } from './read-options.ts';
export { shapefileReader } from './shapefile/index.ts';
export { decodeUtf8 } from './text/index.ts';
export type * from './types.ts';
export { crc32, inflate } from './zip/index.ts';
