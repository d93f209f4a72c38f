import type { Book, Calibration, HandMethod, Head } from '../../book/index.ts';
import type { PlanDay, PlanLoad, PlanTask } from '../../plan/result/index.ts';
import {
  formatLength,
  formatNumber,
  formatRate,
  formatSpeed,
  formatWidth,
  type UnitSystem,
} from '../../units/index.ts';
import type { Fact } from '../blocks.ts';
import { CALIBRATION, LOAD_TICKETS } from '../texts/index.ts';
import { dateWord, methodWord } from '../words.ts';

/** What a load is put out with, and the calibration that its rate rests on: one line for each head and hand method. */
export function putOut(book: Book, day: PlanDay, load: PlanLoad): readonly Fact[] {
  const methods = new Map<string, PlanTask['method']>();
  for (const task of day.stops.flatMap((stop) => stop.tasks)) {
    if (task.loadNumbers.includes(load.number)) methods.set(JSON.stringify(task.method), task.method);
  }
  return [...methods.values()].flatMap((method) => {
    const name = methodWord(book, method);
    const owner = ownerOf(book, method);
    if (owner === undefined) return [{ label: LOAD_TICKETS.facts.putOut, value: name }];
    const figures = CALIBRATION.at(name, workingFigures(owner, book.units));
    return [
      { label: LOAD_TICKETS.facts.putOut, value: figures },
      { label: CALIBRATION.title, value: calibrationWords(book, owner, day.date) },
    ];
  });
}

function ownerOf(book: Book, method: PlanTask['method']): Head | HandMethod | undefined {
  if (method.kind === 'hand') return book.handMethods.find((each) => each.id === method.handMethodId);
  const machine = book.machines.find((each) => each.id === method.machineId);
  return machine?.heads.find((each) => each.id === method.headId);
}

function workingFigures(owner: Head | HandMethod, units: UnitSystem): readonly string[] {
  const delivers =
    owner.deliveredGalPer1000SqFt === undefined
      ? []
      : [CALIBRATION.delivers(formatRate(owner.deliveredGalPer1000SqFt, units))];
  if (!('speedMph' in owner)) return [CALIBRATION.pace(formatNumber(owner.minutesPer1000SqFt, 1)), ...delivers];
  return [formatSpeed(owner.speedMph, units), CALIBRATION.swath(formatLength(owner.swathFt, units)), ...delivers];
}

/** The last calibration up to the day: tip, pressure, speed, spacing, what it was set to and when. */
function calibrationWords(book: Book, owner: Head | HandMethod, date: string): string {
  const kept = (owner.calibrations ?? []).filter((each) => each.on <= date);
  const last = kept.toSorted((one, other) => one.on.localeCompare(other.on)).at(-1);
  if (last === undefined) return CALIBRATION.none;
  return [...calibrationFigures(last, book.units), last.setting, CALIBRATION.on(dateWord(book, last.on))]
    .filter((each) => each !== '')
    .join(', ');
}

function calibrationFigures({ given, found }: Calibration, units: UnitSystem): readonly string[] {
  const typed = (name: string): string | undefined => given.find((each) => each.name === name)?.text;
  const figure = (name: string): number => {
    const value = found.find((each) => each.name === name)?.value ?? Number(typed(name) ?? Number.NaN);
    return Number.isFinite(value) ? value : 0;
  };
  const size = typed('size');
  const [psi, mph, spacingIn] = [figure('psi'), figure('mph'), figure('spacing-in')];
  return [
    ...(size === undefined ? [] : [CALIBRATION.tip(size)]),
    ...(psi > 0 ? [CALIBRATION.psi(formatNumber(psi))] : []),
    ...(mph > 0 ? [formatSpeed(mph, units)] : []),
    ...(spacingIn > 0 ? [CALIBRATION.apart(formatWidth(spacingIn, units))] : []),
  ];
}
