/** A KML text round the given elements. */
export function kml(body: string): Uint8Array {
  return new TextEncoder().encode(
    `<?xml version="1.0" encoding="UTF-8"?>\n<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${body}</Document></kml>`,
  );
}

/** A square of 0.001 degrees, west and south of it given. */
export function square(west: number, south: number): string {
  const [east, north] = [west + 0.001, south + 0.001];
  return `${west},${south} ${east},${south} ${east},${north} ${west},${north} ${west},${south}`;
}

export function polygon(outer: string, ...inner: readonly string[]): string {
  const ring = (coordinates: string) => `<LinearRing><coordinates>${coordinates}</coordinates></LinearRing>`;
  const holes = inner.map((each) => `<innerBoundaryIs>${ring(each)}</innerBoundaryIs>`).join('');
  return `<Polygon><outerBoundaryIs>${ring(outer)}</outerBoundaryIs>${holes}</Polygon>`;
}
