/**
 * The rules of the house as data. A folder is a unit: what lies under it, less what lies in a deeper unit.
 * Everything here is read by check.ts; the reasons are in DEVELOPERS.md.
 */

/** A unit of core and what it may import. */
export type Layer = {
  /** Units whose code it may use. */
  readonly uses: readonly string[];
  /** Units of which it may import types only. */
  readonly types?: readonly string[];
};

const GROUND = ['core/base', 'core/units', 'core/book'] as const;
const SHAPES = [...GROUND, 'core/geometry'] as const;
/** The steps between the ground and the problem. Each is handed the result of the one before it, so types are enough. */
const STEPS = ['core/measure', 'core/passes', 'core/reach', 'core/demand', 'core/travel'] as const;
const PLAN_TYPES = ['core/plan/problem', 'core/plan/refills', 'core/plan/result', 'core/plan/judge'] as const;

export const CORE_LAYERS: Readonly<Record<string, Layer>> = {
  'core/base': { uses: [] },
  'core/units': { uses: ['core/base'] },
  'core/book': { uses: ['core/base', 'core/units'] },
  'core/geometry': { uses: GROUND },
  'core/edit': { uses: SHAPES },
  'core/calibrate': { uses: GROUND },
  /** Editing of outlines: what the tools of the map do, without a map. */
  'core/sketch': { uses: SHAPES, types: ['core/edit'] },
  /** Areas and slopes from tape, wheel and level. */
  'core/field-work': { uses: GROUND },
  /** Pictures laid on the ground by control points. */
  'core/imagery': { uses: SHAPES },
  /** Places from addresses. */
  'core/places': { uses: SHAPES },
  'core/measure': { uses: SHAPES },
  'core/passes': { uses: [...SHAPES, 'core/calibrate'], types: ['core/measure'] },
  'core/reach': { uses: [...SHAPES, 'core/calibrate'], types: ['core/measure'] },
  'core/demand': { uses: [...SHAPES, 'core/calibrate'], types: ['core/measure', 'core/passes'] },
  'core/travel': { uses: SHAPES },
  /** Joins a book with a road map: its settings, its places, its drives. */
  'core/travel/by-road': { uses: [...SHAPES, 'core/travel', 'core/roads'] },
  /** Drive times along roads of a map extract. It inflates and checks sums with what files of ground are read with. */
  'core/roads': { uses: [...SHAPES, 'core/formats'] },
  'core/checks': {
    uses: [
      ...SHAPES,
      ...STEPS,
      'core/calibrate',
      'core/field-work',
      'core/round/calendar',
      'core/round/programme',
      'core/round/ledger',
      'core/records',
    ],
    types: ['core/edit'],
  },
  'core/round': { uses: SHAPES },
  /** When a treatment is of use: windows from the calendar or from temperatures. */
  'core/round/timing': { uses: GROUND },
  /** Days that are worked, the clock on the wall, weather and notice. */
  'core/round/calendar': { uses: [...GROUND, 'core/demand'] },
  /** Which lawns and zones a round is for, and rounds made from programmes and from last season's. */
  'core/round/programme': { uses: [...GROUND, 'core/round/calendar'] },
  /** What went and will go down on each lawn in a year, against labels and caps. */
  'core/round/ledger': { uses: [...GROUND, 'core/demand', 'core/round/programme'] },
  /** What plans take and cost: product by week, water by fill point, money by lawn. */
  'core/round/buying': {
    uses: [...GROUND, 'core/demand', 'core/round/timing'],
    types: ['core/plan/result', 'core/round/ledger'],
  },
  /** The routing engine on plain whole numbers; it knows nothing of lawns. */
  'core/routing': { uses: ['core/base'] },
  /** Runs the steps over a whole book and freezes what they found, so it alone uses their code. */
  'core/plan/problem': {
    uses: [
      ...SHAPES,
      ...STEPS,
      'core/calibrate',
      'core/round/calendar',
      'core/round/programme',
      'core/round/timing',
      'core/round/ledger',
    ],
  },
  'core/plan/result': { uses: [...GROUND, 'core/plan/problem', 'core/plan/refills', 'core/plan/explain'] },
  /** How sure a day is: plays a finished plan again and again. */
  'core/plan/chance': { uses: GROUND, types: ['core/plan/result'] },
  /** A day under way: what is done, and what is aboard. */
  'core/plan/live': {
    uses: [...GROUND, 'core/demand', 'core/reach'],
    types: ['core/plan/problem', 'core/plan/result'],
  },
  'core/plan/constraints': { uses: GROUND, types: ['core/plan/problem'] },
  'core/plan/refills': { uses: [...GROUND, 'core/plan/problem'] },
  'core/plan/search': {
    uses: [...GROUND, 'core/plan/problem', 'core/plan/refills', 'core/plan/constraints', 'core/routing'],
    types: ['core/plan/result'],
  },
  'core/plan/judge': { uses: GROUND, types: ['core/plan/problem', 'core/plan/result'] },
  /** A plan changed by hand, and what the judge says to it. */
  'core/plan/board': {
    uses: [
      ...GROUND,
      'core/measure',
      'core/passes',
      'core/reach',
      'core/round/programme',
      'core/plan/problem',
      'core/plan/refills',
      'core/plan/result',
      'core/plan/explain',
      'core/plan/search',
      'core/plan/judge',
    ],
  },
  'core/plan/explain': { uses: [...GROUND, 'core/plan/problem', 'core/plan/refills'] },
  /** Turns what a file holds into properties, and says what that would change in a book. */
  'core/intake': { uses: [...SHAPES, 'core/edit', 'core/formats', 'core/places'] },
  /** What a lawn costs and what is asked for it: runs the steps for one lawn, so it uses their code. */
  'core/quote': { uses: [...GROUND, ...STEPS, 'core/calibrate'] },
  /** What was applied, as rules ask for it: drawn up from book, plan and visits, and kept in versions. */
  'core/records': {
    uses: [...GROUND, 'core/reach', 'core/round/ledger', 'core/plan/live'],
    types: ['core/edit', 'core/plan/result'],
  },
  'core/formats': {
    uses: [...SHAPES, 'core/records'],
    types: [...STEPS, ...PLAN_TYPES, 'core/round/ledger', 'core/round/buying'],
  },
  'core/reports': {
    uses: [
      ...SHAPES,
      'core/calibrate',
      'core/demand',
      'core/field-work',
      'core/records',
      'core/compare',
      'core/round/buying',
      'core/round/ledger',
    ],
    types: [...STEPS, ...PLAN_TYPES, 'core/round', 'core/quote'],
  },
  /** Two fleets on the same round. */
  'core/compare': { uses: GROUND, types: ['core/plan/result'] },
  'core/contract': {
    uses: [...GROUND, 'core/edit', 'core/plan/result'],
    types: [
      ...STEPS,
      ...PLAN_TYPES,
      'core/plan/board',
      'core/places',
      'core/formats',
      'core/roads',
      'core/travel/by-road',
    ],
  },
  /** The one place that joins the steps into a run: book in, plan out. */
  'core/plan': {
    uses: [
      ...SHAPES,
      ...STEPS,
      'core/plan/problem',
      'core/plan/refills',
      'core/plan/result',
      'core/plan/search',
      'core/plan/judge',
      'core/plan/constraints',
      'core/plan/explain',
    ],
  },
};

/** Two pieces that check each other may share no code, however far down, but for what lies under both by design. */
export const SEPARATIONS: readonly {
  readonly one: string;
  readonly other: readonly string[];
  readonly mayShare: readonly string[];
}[] = [{ one: 'core/plan/judge', other: ['core/plan/search', 'core/plan/refills'], mayShare: GROUND }];

/** Packages kept to the folders that own them. A folder stands for everything under it. */
export const PACKAGE_OWNERS: Readonly<Record<string, readonly string[]>> = {
  '@turf/*': ['core/geometry'],
  'clipper2-ts': ['core/geometry'],
  leaflet: ['renderer/map'],
  '@geoman-io/*': ['renderer/map'],
  fflate: ['core/formats'],
  saxes: ['core/formats', 'core/roads'],
  wellknown: ['core/formats'],
  dxf: ['core/formats'],
  proj4: ['core/geometry'],
  geotiff: ['electron/services/geotiff', 'electron/services/imagery', 'electron/services/ground'],
  pmtiles: ['electron/services/imagery'],
  'lucide-react': ['renderer'],
  react: ['renderer'],
  'react-dom': ['renderer'],
  'react-aria-components': ['renderer'],
  zustand: ['renderer'],
  'd3-scale': ['renderer'],
  '@fontsource/*': ['renderer'],
  sqlite3: ['electron/services/store', 'electron/services/imagery', 'electron/services/ground'],
  ws: ['electron/loopback'],
  papaparse: ['core/formats'],
  electron: ['electron/main', 'electron/preload'],
  'electron-builder': ['electron/packaging'],
  '@valibot/to-json-schema': ['electron/tools'],
  valibot: ['core', 'electron', 'renderer'],
  vite: ['renderer/vite.config.mjs', 'electron/build.mjs', 'electron/tools'],
  '@vitejs/*': ['renderer/vite.config.mjs'],
  highs: ['tests/core/plan/mip'],
};

/** Type-only packages that any folder may name. */
export const TYPE_PACKAGES = ['geojson'] as const;

/** Words that core may not use: its answers depend on its arguments alone. */
export const IMPURE: readonly { readonly pattern: RegExp; readonly word: string; readonly instead: string }[] = [
  { pattern: /\bDate\s*\.\s*now\b/g, word: 'Date.now()', instead: 'take a Clock from core/base' },
  { pattern: /\bnew\s+Date\s*(?:\(\s*\)|(?![\s(]))/g, word: 'new Date()', instead: 'take a Clock from core/base' },
  { pattern: /\bperformance\s*\.\s*now\b/g, word: 'performance.now()', instead: 'take a Clock from core/base' },
  { pattern: /\bMath\s*\.\s*random\b/g, word: 'Math.random()', instead: 'take a Random from core/base' },
  { pattern: /\b(?:globalThis|console|process)\s*\./g, word: 'a global of the host', instead: 'have it handed in' },
];

/** Where a program starts. Nobody imports such a file, so in a ring it stands for itself and not for its folder. */
export const STARTS: readonly string[] = [
  'electron/main/main.ts',
  'electron/preload/preload.ts',
  'electron/services/jobs/plan-worker.ts',
  'electron/services/ground/ground-worker.ts',
  'electron/services/roads/roads-worker.ts',
  'electron/loopback/loopback.ts',
  'electron/cli/cli.ts',
  'renderer/app/main.tsx',
];

export const MOST_LINES = 500;

/** What may lie at the top level, besides dot files and what git ignores. */
export const TOP_LEVEL = [
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'package.json',
  'package-lock.json',
  'electron',
  'renderer',
  'core',
  'tests',
  'sample-routes',
  'docs',
] as const;
