export { applyIntake } from './apply.ts';
export { readScale, type ScaleReading, scaleErrorShare, unitResidualM } from './coordinates.ts';
export { fieldSamples, type Guess, guessMapping } from './guess.ts';
export { guessUnit, unitsOf } from './guess-unit.ts';
export {
  type ControlPoint,
  type CoordinatesAnswer,
  FIELD_UNITS,
  type FieldUnit,
  type FieldUse,
  type FieldUses,
  LAYER_ROLES,
  type LayerMapping,
  type LayerRole,
  type Mapping,
  MEANINGS,
  type Meaning,
} from './mapping.ts';
export { looksLikePerson } from './persons.ts';
export { intakeSteps, previewIntake, type Steps } from './preview.ts';
export * from './types.ts';
