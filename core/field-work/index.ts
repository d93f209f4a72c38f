export { type WorkedArea, workedArea, workingWords } from './area.ts';
export { slopeWorkingWords, type WorkedSlope, workedSlope } from './slope.ts';
