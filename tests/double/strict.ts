/** Names that the language and its module loaders ask of any object. */
const ALWAYS = new Set([
  'then',
  'default',
  '__esModule',
  'toJSON',
  'constructor',
  'asymmetricMatch',
  '$$typeof',
  'nodeType',
]);

/**
 * An object of which only what it has can be used: anything else throws, so that no test passes on something that is not there.
 * Methods of a class run on the object itself, since a proxy has none of its private parts.
 */
export function strict<T extends object>(name: string, object: T): T {
  return new Proxy(object, {
    get(target, property) {
      if (typeof property !== 'symbol' && !(property in target) && !ALWAYS.has(property)) {
        throw new Error(`the double has no ${name}.${property}`);
      }
      const value: unknown = Reflect.get(target, property, target);
      const isMethod = typeof value === 'function' && !Object.hasOwn(target, property) && property !== 'constructor';
      return isMethod ? value.bind(target) : value;
    },
  });
}

/** Refuses options beyond the ones that the double heeds or may pass over. */
export function onlyKnown(name: string, options: object, known: readonly string[]): void {
  for (const option of Object.keys(options)) {
    if (!known.includes(option)) throw new Error(`the double has no option ${option} of ${name}`);
  }
}
