export type {
  Action,
  Applied,
  ApplyResult,
  BookSettings,
  MoveAction,
  PutAction,
  RemoveAction,
  SetAction,
  SeveralAction,
} from './action.ts';
export { applyAction } from './apply.ts';
export {
  endMerging,
  type History,
  MOST_STEPS,
  NO_HISTORY,
  remember,
  type Step,
  stepBack,
  stepForward,
} from './history.ts';
export { takesNothingBack } from './lasting.ts';
export { type AnyRecord, RECORD_NAMES, type RecordOf, TABLES, type TableName } from './tables.ts';
