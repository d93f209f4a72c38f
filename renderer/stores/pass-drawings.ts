import type { Result } from '../../core/base/index.ts';
import type { PassPicture } from '../../core/passes/index.ts';
import { callHost } from './host.ts';

/** Passes of a head over a zone that a room wants to show. */
export type PassWish = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly machineId: string;
  readonly headId: string;
};

/** What the host lays at one asking: few enough that it can be told how far it is. */
const AT_ONCE = 12;

/**
 * Passes laid by the host, in the order of the wishes. Each may fail by itself.
 * @param onDone told after each asking, with what is laid so far; false stops
 */
export async function drawPasses(
  session: string,
  wanted: readonly PassWish[],
  onDone: (drawings: readonly Result<PassPicture | null>[]) => boolean = () => true,
): Promise<readonly Result<PassPicture | null>[]> {
  const drawings: Result<PassPicture | null>[] = [];
  for (let from = 0; from < wanted.length; from += AT_ONCE) {
    const some = wanted.slice(from, from + AT_ONCE);
    const asked = some.map(({ propertyId, zoneId, machineId, headId }) => ({ propertyId, zoneId, machineId, headId }));
    const answer = await callHost('passes.draw', { session, wanted: asked });
    drawings.push(...(answer.ok ? answer.value.drawings : some.map(() => answer)));
    if (!onDone(drawings)) break;
  }
  return drawings;
}
