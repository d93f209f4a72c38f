/**
 * Growing degree days of one day: what the middle of the highest and the lowest temperature is above the base, never less than 0.
 * The simple average method, as in: Virginia Tech text via Kent County Extension, 2008.
 *
 * @param maxF highest temperature of the air, F
 * @param minF lowest temperature of the air, F
 * @param baseF base, F; figures of different bases cannot be compared
 * @returns degree days, F
 */
export function degreeDays(maxF: number, minF: number, baseF: number): number {
  return Math.max(0, (maxF + minF) / 2 - baseF);
}
