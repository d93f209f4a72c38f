import type { Random } from '../../core/base/index.ts';

/** Values that somebody might send who means no good, or whose program is broken. */
const ODD_VALUES: readonly unknown[] = [
  null,
  undefined,
  true,
  '',
  ' ',
  '\0',
  '../../etc/passwd',
  '<script>alert(1)</script>',
  "'; DROP TABLE record; --",
  '\u202egnp.exe',
  '\ud800',
  '__proto__',
  'constructor',
  'toString',
  'x'.repeat(100_000),
  '9'.repeat(400),
  Number.NaN,
  Number.POSITIVE_INFINITY,
  -0,
  -1,
  0.5,
  1e308,
  5e-324,
  2 ** 53,
  -(2 ** 31) - 1,
  [],
  {},
  [[]],
  [null],
  { kind: 'set' },
  { kind: '__proto__' },
  { length: 1e9 },
  JSON.parse('{"__proto__": {"kind": "set", "polluted": true}}'),
];

/** Calls over calls, deep enough to overflow a stack that follows it. */
function deep(levels: number): unknown {
  let value: unknown = 1;
  for (let level = 0; level < levels; level += 1) value = level % 2 === 0 ? [value] : { actions: value };
  return value;
}

/** A copy of plain data with one to three of its parts changed: replaced, taken away, doubled many times, put in deeper, renamed. */
export function mutateValue(value: unknown, random: Random): unknown {
  let changed: unknown = structuredClone(value);
  for (let left = 1 + random.below(3); left > 0; left -= 1) changed = changeOnce(changed, random);
  return changed;
}

function changeOnce(value: unknown, random: Random): unknown {
  // The deeper a part lies the more there is to step over: nine steps of ten go on down.
  if (typeof value !== 'object' || value === null || random.below(10) === 0) return oddFor(value, random);
  if (Array.isArray(value)) {
    if (value.length === 0) return [oddFor(null, random)];
    const at = random.below(value.length);
    const copy = [...value];
    copy[at] = changeOnce(copy[at], random);
    return random.below(12) === 0 ? Array.from({ length: 2000 }, () => copy[at]) : copy;
  }
  const keys = Object.keys(value);
  if (keys.length === 0) return { extra: oddFor(null, random) };
  const key = keys[random.below(keys.length)] as string;
  const { [key]: part, ...rest } = value as Readonly<Record<string, unknown>>;
  switch (random.below(12)) {
    case 0:
      return rest;
    case 1:
      return { ...value, [`${key}s`]: part };
    default:
      return { ...value, [key]: changeOnce(part, random) };
  }
}

function oddFor(value: unknown, random: Random): unknown {
  if (random.below(40) === 0) return deep(5000);
  if (typeof value === 'string' && random.below(3) === 0)
    return `${value}${ODD_VALUES[4 + random.below(12)] as string}`;
  if (typeof value === 'number' && random.below(3) === 0) return value * [0, -1, 1e9, 1.5, 1e-9][random.below(5)]!;
  return ODD_VALUES[random.below(ODD_VALUES.length)];
}
