import { err, ok, type Result } from '../../base/index.ts';
import type { Position } from '../../book/index.ts';
import type { Asked, Engine, EngineRequest } from './types.ts';

const LONGEST_ADDRESS = 300;

/**
 * An address as somebody typed it: http or https, a host, and a path where there is one. No name and password, no
 * question mark: what is sent is the program's own. Error: 'request-invalid'.
 */
export function readEngineAddress(text: string): Result<string> {
  const trimmed = text.trim().replace(/\/+$/, '');
  const parts = /^(https?):\/\/(\[[0-9a-f:]+\]|[a-z0-9.-]+)(:\d{1,5})?((?:\/[A-Za-z0-9._~-]+)*)$/i.exec(trimmed);
  if (parts !== null && trimmed.length <= LONGEST_ADDRESS && !trimmed.includes('..')) return ok(trimmed);
  const hint = 'Write it like http://127.0.0.1:5000, the address of a program that you run yourself.';
  return err('request-invalid', 'address of the engine', 'This is no address that can be asked for drive times.', hint);
}

/**
 * A block as the engine wants to be asked. OSRM API v1: coordinates in the path, sources and destinations by number, both
 * annotations (documentation at commit 4fc76ca). Valhalla: a JSON body, kilometres, the short form of the answer, and a limit for how
 * far a road may be (names from memory).
 */
export function requestFor(engine: Engine, { at, block, mostM }: Asked): EngineRequest {
  if (engine.kind === 'valhalla') {
    const place = (index: number) => {
      const [lon, lat] = at[index] as Position;
      return { lat: rounded(lat), lon: rounded(lon), search_cutoff: Math.ceil(mostM) };
    };
    const body = {
      sources: block.sources.map(place),
      targets: block.targets.map(place),
      costing: 'auto',
      units: 'kilometers',
      verbose: false,
    };
    return { url: `${engine.address}/sources_to_targets`, body: JSON.stringify(body) };
  }
  const places = placesOf({ at, block, mostM });
  const numberOf = new Map(places.map((each, index) => [each, index]));
  const list = (indices: readonly number[]): string => indices.map((each) => numberOf.get(each) ?? 0).join(';');
  const coordinates = places.map((each) => (at[each] as Position).map(rounded).join(',')).join(';');
  const question = `annotations=duration,distance&generate_hints=false&sources=${list(block.sources)}&destinations=${list(block.targets)}`;
  return { url: `${engine.address}/table/v1/driving/${coordinates}?${question}`, body: null };
}

/** The places of a block, each once. */
function placesOf({ block }: Asked): readonly number[] {
  return [...new Set([...block.sources, ...block.targets])];
}

/** A tenth of a metre: more says nothing more to a road. */
function rounded(degrees: number): number {
  return Math.round(degrees * 1e6) / 1e6;
}
