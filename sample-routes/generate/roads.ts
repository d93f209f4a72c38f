import { type Spot, toPosition } from './ground.ts';

/** A small invented road network: corners by name, and roads through them. */
export type InventedRoads = {
  /** Metres east and north of the middle of the invented place, with tags where there are any. */
  readonly corners: Readonly<Record<string, { readonly at: Spot; readonly tags?: Tags }>>;
  readonly roads: readonly { readonly name: string; readonly through: readonly string[]; readonly tags: Tags }[];
  /** Turns that are not allowed, by names of roads and of the corner between them. */
  readonly turns: readonly { readonly rule: string; readonly from: string; readonly at: string; readonly to: string }[];
};
type Tags = Readonly<Record<string, string>>;

const OWNER = 'Invented roads of the Swardway samples';
const LICENCE = 'MIT, like the program';

/** The roads in the XML form of OpenStreetMap's data model, one element on each line; the same roads give the same bytes. */
export function writeRoads({ corners, roads, turns }: InventedRoads): string {
  const names = Object.keys(corners);
  const nodeId = (name: string): number => {
    const at = names.indexOf(name);
    if (at < 0) throw new RangeError(`no corner ${name}`);
    return at + 1;
  };
  const wayId = (name: string): number => {
    const at = roads.findIndex((each) => each.name === name);
    if (at < 0) throw new RangeError(`no road ${name}`);
    return at + 1;
  };
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<osm version="0.6" generator="npm run samples" copyright="${OWNER}" license="${LICENCE}">`,
    ...Object.values(corners).map(({ at, tags = {} }, index) => {
      const [lon, lat] = toPosition(at).map((each) => each.toFixed(7));
      const open = ` <node id="${index + 1}" lat="${lat}" lon="${lon}"`;
      return Object.keys(tags).length === 0 ? `${open}/>` : `${open}>${tagsOf(tags)}</node>`;
    }),
    ...roads.map(({ name, through, tags }, index) => {
      const refs = through.map((each) => `<nd ref="${nodeId(each)}"/>`).join('');
      return ` <way id="${index + 1}">${refs}${tagsOf({ name, ...tags })}</way>`;
    }),
    ...turns.map(
      ({ rule, from, at, to }, index) =>
        ` <relation id="${index + 1}"><member type="way" ref="${wayId(from)}" role="from"/><member type="node" ref="${nodeId(at)}" role="via"/><member type="way" ref="${wayId(to)}" role="to"/>${tagsOf({ type: 'restriction', restriction: rule })}</relation>`,
    ),
    '</osm>',
    '',
  ].join('\n');
}

function tagsOf(tags: Tags): string {
  return Object.entries(tags)
    .map(([key, value]) => `<tag k="${key}" v="${value}"/>`)
    .join('');
}
