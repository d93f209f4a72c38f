import { create } from 'zustand';
import { err, ok, type Result } from '../../core/base/index.ts';
import { looksLikeWeather, readTable, type Table } from '../../core/formats/index.ts';
import { filesWords } from '../texts/stores/index.ts';
import { useBook } from './book.ts';
import { pickFile } from './files.ts';
import { showError } from './notices.ts';
import { goTo, showView } from './view.ts';

/** A table of weather by the hour that waits in the calendar for answers. */
export type OpenedWeather = { readonly name: string; readonly table: Table };

export const useWeatherFile = create<{ readonly opened: OpenedWeather | null }>(() => ({ opened: null }));

export function closeWeatherFile(): void {
  useWeatherFile.setState({ opened: null });
}

/** Chooses a table of weather and shows what it would add. */
export async function importWeather(): Promise<void> {
  const file = await pickFile('csv');
  if (file === null) return;
  const table = readTable(file.text ?? '', file.name);
  const taken = table.ok ? takeWeatherTable(file.name, table.value) : table;
  if (!taken.ok) showError(taken.error);
}

/** The table of weather by the hour in a text; null where it is something else. */
export function weatherTableOf(text: string, name: string): Table | null {
  const read = readTable(text, name);
  return read.ok && looksLikeWeather(read.value) ? read.value : null;
}

/** Shows a table in the calendar of the round, where its units and dates are asked. */
export function takeWeatherTable(name: string, table: Table): Result<null> {
  if ((useBook.getState().open?.book.rounds ?? []).length === 0) {
    const detail = filesWords.weatherFile.noRound;
    return err('nothing-to-do', name, detail, filesWords.weatherFile.noRoundAdvice);
  }
  useWeatherFile.setState({ opened: { name, table } });
  goTo('round');
  showView('round', 'calendar');
  return ok(null);
}
