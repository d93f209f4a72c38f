import type { FieldUnit, IntakePreview, LayerRole, Meaning, RowKind } from '../../../core/intake/index.ts';
import { importWords } from '../../texts/app/index.ts';

export const ROLE_WORDS: Readonly<Record<LayerRole, string>> = {
  properties: importWords.words.properties,
  zones: importWords.words.zones,
  exclusions: importWords.words.exclusions,
  gates: importWords.words.gates,
  parcels: importWords.words.parcels,
  nothing: importWords.words.nothingToTake,
};

export const MEANING_WORDS: Readonly<Record<Meaning, string>> = {
  id: importWords.words.id,
  name: importWords.words.name,
  address: importWords.words.address,
  property: importWords.words.propertyId,
  propertyName: importWords.words.propertyName,
  role: importWords.words.recordRole,
  area: importWords.words.area,
  slope: importWords.words.slope,
  gateWidth: importWords.words.gateWidth,
  what: importWords.words.kindOfExclusion,
  keepAway: importWords.words.keepAway,
  zones: importWords.words.zonesBehindGate,
  locked: importWords.words.locked,
  parking: importWords.words.recordsLabel,
};

/** What the records of a layer can say, the usual things first. */
export const MEANINGS_OF: Readonly<Record<LayerRole, readonly Meaning[]>> = {
  properties: ['id', 'name', 'address', 'area', 'gateWidth', 'slope', 'property', 'role', 'parking'],
  zones: ['id', 'name', 'property', 'propertyName', 'area', 'slope', 'gateWidth'],
  exclusions: ['what', 'name', 'keepAway', 'property', 'id'],
  gates: ['gateWidth', 'name', 'locked', 'zones', 'property', 'id'],
  parcels: ['id', 'name', 'address', 'property'],
  nothing: [],
};
/** What records that say themselves what they are may say besides. */
export const ROLE_MEANINGS: readonly Meaning[] = ['propertyName', 'what', 'keepAway', 'zones', 'locked'];

export const UNIT_WORDS: Readonly<Record<FieldUnit, string>> = importWords.units;

export const KIND_WORDS: Readonly<Record<RowKind, string>> = importWords.kinds;

/** What the button that does it says. */
export function takeWords({ properties }: IntakePreview): string {
  const fresh = properties.filter((each) => each.kind === 'new').length;
  const changed = properties.filter((each) => each.kind === 'changed').length;
  if (changed === 0) return importWords.words.add(fresh);
  if (fresh === 0) return importWords.words.change(changed);
  return importWords.words.addAndChange(fresh, changed);
}

/** Why there is nothing to do, or null. */
export function nothingToTake(preview: IntakePreview | null): string | null {
  if (preview === null) return importWords.words.notLooked;
  if (preview.properties.some((each) => each.kind !== 'same')) return null;
  const { rejected, found } = preview.counts;
  return found > 0 && rejected === found ? importWords.words.allRejected : importWords.words.changesNothing;
}
