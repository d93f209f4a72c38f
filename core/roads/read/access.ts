import { ACCESS } from '../types.ts';
import type { Tags } from './elements.ts';

/** Who may use a road, by the values of the access tags (OpenStreetMap wiki, "Key:access"). */
const LEVELS: Readonly<Record<string, number>> = {
  yes: ACCESS.open,
  permissive: ACCESS.open,
  designated: ACCESS.open,
  official: ACCESS.open,
  public: ACCESS.open,
  discouraged: ACCESS.open,
  destination: ACCESS.ends,
  customers: ACCESS.ends,
  delivery: ACCESS.ends,
  local: ACCESS.ends,
  residents: ACCESS.ends,
  private: ACCESS.private,
  permit: ACCESS.private,
  no: ACCESS.closed,
  agricultural: ACCESS.closed,
  forestry: ACCESS.closed,
  emergency: ACCESS.closed,
  military: ACCESS.closed,
  psv: ACCESS.closed,
  bus: ACCESS.closed,
};

/** From the widest to the narrowest; the narrowest that is told counts. */
const CAR_KEYS = ['access', 'vehicle', 'motor_vehicle', 'motorcar'] as const;
const HEAVY_KEYS = ['access', 'vehicle', 'motor_vehicle', 'hgv'] as const;

export type Admission = { readonly car: number | null; readonly heavy: number | null };

/** What the tags say of cars and of heavy goods vehicles, as one of ACCESS; null where they say nothing. */
export function admissionOf(tags: Tags): Admission {
  return { car: narrowest(tags, CAR_KEYS), heavy: narrowest(tags, HEAVY_KEYS) };
}

function narrowest(tags: Tags, keys: readonly string[]): number | null {
  let told: number | null = null;
  for (const key of keys) {
    // Of several values the first counts, as in "customers;delivery".
    const value = tags.get(key)?.split(';')[0]?.trim();
    if (value !== undefined) told = LEVELS[value] ?? told;
  }
  return told;
}
