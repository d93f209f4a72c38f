import type { Choice, Property } from '../../book/index.ts';
import { formatArea } from '../../units/index.ts';

/** Ground to treat on a whole property, ft2; null where it is not known. */
export type AreaOf = (property: Property) => number | null;

/** Why tags do not fit a choice; '' where they do. */
export function tagsWhy({ tags, withoutTags }: Choice, own: readonly string[]): string {
  const has = new Set(own.map(plain));
  if (tags !== undefined && tags.length > 0 && !tags.some((each) => has.has(plain(each))))
    return tags.length === 1 ? `not tagged ${tags[0]}` : `tagged neither ${tags.join(' nor ')}`;
  const unwanted = withoutTags?.find((each) => has.has(plain(each)));
  return unwanted === undefined ? '' : `tagged ${unwanted}`;
}

/** Why the address and size of a property do not fit a choice; '' where they do. */
export function placeWhy({ address, leastSqFt, mostSqFt }: Choice, property: Property, areaOf: AreaOf): string {
  if (address !== undefined && address.trim() !== '' && !plain(property.address).includes(plain(address)))
    return `its address has no “${address.trim()}”`;
  if (leastSqFt === undefined && mostSqFt === undefined) return '';
  const area = areaOf(property);
  if (area === null) return 'its area is not known';
  if (leastSqFt !== undefined && area < leastSqFt)
    return `${formatArea(area)} to treat, less than ${formatArea(leastSqFt)}`;
  if (mostSqFt !== undefined && area > mostSqFt)
    return `${formatArea(area)} to treat, more than ${formatArea(mostSqFt)}`;
  return '';
}

/** Whether nothing is asked for. */
export function isEmptyChoice({ tags, withoutTags, address, leastSqFt, mostSqFt }: Choice): boolean {
  const none = (list: readonly string[] | undefined): boolean => list === undefined || list.length === 0;
  return none(tags) && none(withoutTags) && (address ?? '') === '' && leastSqFt === undefined && mostSqFt === undefined;
}

function plain(text: string): string {
  return text.trim().toLowerCase();
}
