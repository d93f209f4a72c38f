export { type DayEvent, dayEvents, eventIndexAt, homeSec, stopAt, stopNumberOf } from './day-events.ts';
export { type HomeRange, layoutRibbon, type RibbonLayout } from './layout.ts';
export { levelAt, levelPaths } from './level-line.ts';
export { cursorWords, LevelsRibbon, nextMoment, RIBBON_KEYS } from './levels-ribbon.tsx';
export { LevelsTable } from './levels-table.tsx';
export { eventWords, momentWords, refillAmounts } from './readout.ts';
export { timeScale, timeTicks } from './time-scale.ts';
