export * from './background.ts';
export { restoreBackup, showBackups, useBackups } from './backups.ts';
export * from './board.ts';
export * from './board-stop.ts';
export {
  bookChangedElsewhere,
  closeBook,
  edit,
  redo,
  type SaveState,
  showBook,
  trySavingAgain,
  undo,
  useBook,
} from './book.ts';
export { checkInBackground, roomOfIssue, useChecks } from './checks.ts';
export * from './current.ts';
export { copyDiagnostics } from './diagnostics.ts';
export * from './draft.ts';
export * from './draft-carry.ts';
export * from './draft-figures.ts';
export * from './draft-finish.ts';
export * from './draft-operations.ts';
export * from './draft-parts.ts';
export * from './draft-ring.ts';
export * from './draft-square.ts';
export * from './draft-start.ts';
export * from './edits.ts';
export { pickFile, receiveFile } from './files.ts';
export { lookAtSample } from './first-look.ts';
export { exportGround } from './ground-export.ts';
export * from './heights.ts';
export { askHost, callHost, changeSettings, useHost } from './host.ts';
export * from './imports.ts';
export * from './known-passes.ts';
export { knownMeasure, measureInBackground, measureOf, useMeasures } from './measures.ts';
export { type MidLawnRefill, midLawnRefill } from './mid-lawn.ts';
export { closeNotice, type Notice, refuse, say, showError, showNews, useNotices } from './notices.ts';
export * from './offers.ts';
export {
  createBook,
  importFile,
  importList,
  importTemperatures,
  openAtStart,
  openBookFile,
  openSample,
  openToken,
  saveCopy,
  takeDroppedFile,
} from './open.ts';
export * from './overlays.ts';
export { drawPasses, type PassWish } from './pass-drawings.ts';
export * from './passes.ts';
export * from './places.ts';
export { exportPlan } from './plan-export.ts';
export { planFailed } from './plan-failed.ts';
export {
  cancelPlanning,
  type KnownPlan,
  planDone,
  planFleets,
  planProgress,
  type RunningJob,
  startPlanning,
  startPlans,
  usePlans,
} from './plans.ts';
export * from './roads.ts';
export * from './room-views.ts';
export * from './rounds.ts';
export { saveTable } from './save-table.ts';
export * from './season.ts';
export * from './selection.ts';
export { type Attention, type RoomSummary, roomSummaries } from './summaries.ts';
export { type MergedTemperatures, openQuestions, readAnswered, type TemperatureImport } from './temperature-import.ts';
export { currentReading, currentWeekBegin, useBookAsRead, useFormat, useWeekBegin } from './use-format.ts';
export { isOlderThanBook, usePlanStale } from './use-plan-stale.ts';
export * from './view.ts';
export * from './visits.ts';
export {
  closeWeatherFile,
  importWeather,
  type OpenedWeather,
  useWeatherFile,
} from './weather-file.ts';
