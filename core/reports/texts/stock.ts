/** Water and bags on their way into a rig. */
export const STOCK = {
  and: ' and ',
  bags: (count: number) => (count === 1 ? '1 bag' : `${count} bags`),
  /** "25.4 gal water into the nurse tank" */
  water: (volume: string) => `${volume} water into the nurse tank`,
  /** "3 bags (150 lb) Granules onto the rig" */
  dry: (bags: string, weight: string, product: string) => `${bags} (${weight}) ${product} onto the rig`,
  /** Where the last bag is not used up: "150 lb, 130 lb of it needed" */
  partly: (whole: string, needed: string) => `${whole}, ${needed} of it needed`,
} as const;
