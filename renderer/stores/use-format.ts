import { useMemo } from 'react';
import { type Formatter, formatterFor } from '../format/index.ts';
import { useHost } from './host.ts';
import { namesWithUnits } from './names-with-units.ts';

/** The formatter of the units that the user has set. */
export function useFormat(): Formatter {
  const units = useHost((state) => state.settings.units);
  return useMemo(() => formatterFor(units, namesWithUnits), [units]);
}
