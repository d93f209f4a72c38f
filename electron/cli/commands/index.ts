import type { Command } from '../command.ts';
import { areaCommand } from './area.ts';
import { calibrateCommand } from './calibrate.ts';
import { demandCommand } from './demand.ts';
import { exportCommand } from './export.ts';
import { importCommand } from './import.ts';
import { judgeCommand } from './judge.ts';
import { measureCommand } from './measure.ts';
import { passesCommand } from './passes.ts';
import { planCommand } from './plan.ts';
import { reachCommand } from './reach.ts';
import { recordsCommand } from './records.ts';
import { reportCommand } from './report.ts';
import { roadsCommand } from './roads.ts';
import { solveCommand } from './solve.ts';

/** Every command. Parsing, help and docs/cli.md come from this table. */
export const COMMANDS: readonly Command[] = [
  measureCommand,
  passesCommand,
  reachCommand,
  demandCommand,
  planCommand,
  judgeCommand,
  reportCommand,
  recordsCommand,
  importCommand,
  exportCommand,
  roadsCommand,
  solveCommand,
  calibrateCommand,
  areaCommand,
];
