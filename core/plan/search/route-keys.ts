/** Numbers that one character of a string can hold. */
const CHARACTERS = 0x10000;

/**
 * Makes keys for routes of a rig: different for different ones, as long as codes are below `codes`. Where one character does not hold
 * them all, each code takes two.
 */
export function routeKeys(codes: number): (rig: number, route: readonly number[]) => string {
  if (codes <= CHARACTERS) return (rig, route) => String.fromCharCode(rig, ...route);
  return (rig, route) =>
    String.fromCharCode(rig, ...route.flatMap((code) => [Math.floor(code / CHARACTERS), code % CHARACTERS]));
}
