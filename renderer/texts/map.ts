/** Words of the map and of drawing on it. */
export const mapWords = {
  panel: {
    label: (map: string) => `${map}. Arrow keys move it, plus and minus zoom; the list holds the same lawns.`,
    northIsUp: 'North is up',
    north: 'N ↑',
  },
  view: {
    full: 'full',
  },
  layers: {
    ft: (feet: string) => `${feet} ft`,
    mi: (feet: number) => `${feet} mi`,
    m: (metres: number) => `${metres} m`,
    km: (metres: number) => `${metres} km`,
  },
  scene: {
    straightLinesNotRoads: 'straight lines, not roads',
    alongRoads: (whose: string) => `along roads${whose}`,
    partlyAlongRoads: (whose: string) => `along roads; dotted: straight lines${whose}`,
    stop: (number: string, stop: string) => `stop ${number}, ${stop}`,
    day: (number: string, stop: string) => `${number}, day ${stop}`,
  },
  marks: {
    drivenRound: (area: string) => `driven round: ${area}`,
    crossing: 'Sides cross here',
    closeOutline: 'Click to close the outline',
    hose: 'hose',
    hoseStandOf: (zone: string) => `hose stand of ${zone}`,
    byAddressRange: 'placed by address range',
  },
} as const;
