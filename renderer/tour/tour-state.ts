import { create } from 'zustand';
import {
  askHost,
  changeSettings,
  goTo,
  lookAtSample,
  moveCursor,
  selectDay,
  selectProperty,
  selectSheet,
  selectShelf,
  selectStop,
  showView,
  useHost,
} from '../stores/index.ts';
import type { TourStep } from './tour-steps.ts';

/** Which step of the tour is shown; null while it is not taken. */
export const useTour = create<{ readonly at: number | null }>(() => ({ at: null }));

/** Takes the tour from its beginning through the open book, which has to have a planned day. */
export function startTour(): void {
  useTour.setState({ at: 0 });
}

/** Leaves the tour. It is not offered by itself again. */
export function leaveTour(): void {
  useTour.setState({ at: null });
  if (!useHost.getState().settings.tourSeen) changeSettings({ tourSeen: true }).catch(() => undefined);
}

/** Opens an invented book where it shows the most, and takes the tour there unless it was taken before. */
export async function lookAround(sampleId: string, always = false): Promise<void> {
  const isShown = await lookAtSample(sampleId);
  if (isShown && (always || !useHost.getState().settings.tourSeen)) startTour();
}

/** The same with the sample that is offered first. */
export async function lookAroundFirst(always = false): Promise<void> {
  const [first] = (await askHost('samples.list', {})) ?? [];
  if (first !== undefined) await lookAround(first.sampleId, always);
}

/** Goes to the room of a step and selects what it is about. */
export function showStep({ room, target }: TourStep): void {
  const { view, machineId, day, stop, sec, propertyId } = target;
  if (view !== undefined) showView(room, view);
  if (machineId !== undefined) selectShelf('machines', machineId);
  if (propertyId !== undefined) selectProperty(propertyId);
  if (day !== undefined) selectDay(day.date, day.rigId);
  if (stop !== undefined) selectStop(stop.number, stop.propertyId);
  moveCursor(sec ?? null);
  if (room === 'paper') selectSheet('run-sheet');
  goTo(room);
}
