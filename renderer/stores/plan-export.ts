import type { PlanFileWriter } from '../../core/formats/index.ts';
import { type Plan, type PlanDay, writePlan } from '../../core/plan/result/index.ts';
import { useBook } from './book.ts';
import { fileName, receiveFile } from './files.ts';
import { askHost } from './host.ts';
import { currentReading } from './use-format.ts';

/** Writes days of a plan of the open book as a file of the given kind, where the user says. */
export async function exportPlan(writer: PlanFileWriter, plan: Plan, days: readonly PlanDay[]): Promise<void> {
  const { open } = useBook.getState();
  if (open === null) return;
  const title = `${open.book.name}: ${plan.roundName}`;
  const text = writer.write(
    { book: { ...open.book, ...currentReading() }, plan, days },
    { title, nowMs: Date.now(), planText: writePlan },
  );
  const [only, ...others] = days;
  const which = only === undefined || others.length > 0 || writer.isWhole ? '' : ` ${only.date} ${only.rigName}`;
  // The tables share an ending, so that their names say which they are.
  const table = writer.extension === 'csv' ? ` ${writer.id.replace('-csv', '')}` : '';
  const suggestedName = `${fileName(`${plan.roundName}${which}${table}`)}.${writer.extension}`;
  receiveFile(await askHost('file.saveText', { suggestedName, text }));
}
