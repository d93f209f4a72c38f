export { type Box, placePanel } from './place-panel.ts';
export { Tour } from './tour.tsx';
export { lookAround, lookAroundFirst, startTour } from './tour-state.ts';
export { type TourStep, tourSteps } from './tour-steps.ts';
