import { describe, expect, it } from 'vitest';
import { type ProjectionReading, projectionFromEpsg, projectionFromWkt } from '../../../core/geometry/index.ts';

/** EPSG code, longitude, latitude, and what cs2cs (PROJ 9.1.1) makes of them, to a tenth of a millimetre or of a thousandth of a foot. */
const PROJ_FIGURES: readonly (readonly [code: number, longitude: number, latitude: number, x: number, y: number])[] = [
  [2249, -71.11, 42.37, 761556.3125, 2960098.3484],
  [26986, -71.11, 42.37, 232122.8282, 902239.7811],
  [2263, -73.95, 40.65, 998124.4385, 176092.8678],
  [2222, -110.2, 33.2, 689803.9723, 800298.7756],
  [2273, -81, 34, 2000000.0, 788303.8676],
  [2281, -111.9, 39.5, 1527551.3243, 6986872.4806],
  [2284, -77.4, 37.5, 11802012.9322, 3707465.9707],
  [3452, -90.1, 30, 3671215.1374, 547593.2755],
  [3423, -119.8, 39.5, 2281357.925, 14854989.3811],
  [6425, -117, 33, 1929912.7243, 592670.7426],
  [6494, -84.8, 43.6, 19570226.5201, 103608.9968],
  [2285, -122.3, 47.6, 1278588.8793, 222309.7991],
  [3734, -81.7, 41.4, 2187973.6455, 632506.9849],
  [2236, -81.4, 28.5, 527690.8203, 1514703.9927],
  [32161, -66.1, 18.3, 235241.2761, 251683.3271],
  [26932, -142.5, 57.5, 470025.7409, 389751.3671],
  [32617, -82.9, 40.1, 338048.2855, 4440586.3234],
  [26918, -74.4, 40.6, 550764.8891, 4494527.794],
  [6344, -85.8, 38.2, 1130811.5777, 4252589.3792],
  [32733, 18, -33, 780299.9895, 6344714.1456],
  [3857, -82.9, 40.1, -9228385.7868, 4880484.6657],
  [5070, -82.9, 40.1, 1103509.4647, 1974360.1036],
];

/** Half a millimetre, or half a thousandth of a foot: false eastings in feet were rounded to 0.1 mm when they were laid down. */
const CLOSE = 0.0005;

function known(reading: ProjectionReading) {
  if (reading.kind === 'unknown') throw new Error(reading.why);
  return reading.projection;
}

describe('projections by EPSG code', () => {
  it.each(PROJ_FIGURES)('EPSG:%i agrees with PROJ both ways', (code, longitude, latitude, x, y) => {
    const { fromDegrees, toDegrees } = known(projectionFromEpsg(code));
    const [gotX, gotY] = fromDegrees([longitude, latitude]) ?? [];
    expect(Math.abs((gotX ?? Number.NaN) - x)).toBeLessThan(CLOSE);
    expect(Math.abs((gotY ?? Number.NaN) - y)).toBeLessThan(CLOSE);
    const back = toDegrees(x, y);
    // 1e-8 degrees is about a millimetre.
    expect(back?.[0]).toBeCloseTo(longitude, 8);
    expect(back?.[1]).toBeCloseTo(latitude, 8);
  });

  it('leaves degrees as they are', () => {
    for (const code of [4326, 4269, 6318]) {
      expect(known(projectionFromEpsg(code)).toDegrees(-71.123456789012, 42.1)).toEqual([-71.123456789012, 42.1]);
    }
  });

  it('says which codes are known where one is not', () => {
    for (const code of [0, -1, 27700, 4267, 26901.5, Number.NaN, 32600, 32661]) {
      const reading = projectionFromEpsg(code);
      expect(reading.kind, String(code)).toBe('unknown');
      expect(reading.kind === 'unknown' && reading.why).toContain(`EPSG:${code}`);
    }
  });

  it('knows all zones of its table, each in some unit, and the same ground by metres and by feet', () => {
    let zones = 0;
    for (let code = 1; code < 33000; code += 1) {
      const reading = projectionFromEpsg(code);
      if (reading.kind === 'known' && reading.projection.name.includes('State Plane')) zones += 1;
    }
    // Counted in the copy of the EPSG dataset that comes with PROJ 9.1.1: not withdrawn, and not Alaska zone 1.
    expect(zones).toBe(879);
    const metres = known(projectionFromEpsg(26986)).fromDegrees([-71.11, 42.37]);
    const feet = known(projectionFromEpsg(2249)).fromDegrees([-71.11, 42.37]);
    expect((feet?.[0] ?? 0) * (1200 / 3937)).toBeCloseTo(metres?.[0] ?? 0, 3);
    expect((feet?.[1] ?? 0) * (1200 / 3937)).toBeCloseTo(metres?.[1] ?? 0, 3);
  });

  it('gives nothing for what is not on the earth', () => {
    const { toDegrees, fromDegrees } = known(projectionFromEpsg(2249));
    expect(toDegrees(Number.NaN, 0)).toBeNull();
    expect(toDegrees(Number.POSITIVE_INFINITY, 0)).toBeNull();
    expect(fromDegrees([Number.NaN, 42])).toBeNull();
    expect(known(projectionFromEpsg(4326)).toDegrees(181, 0)).toBeNull();
    expect(known(projectionFromEpsg(4326)).toDegrees(0, -91)).toBeNull();
  });
});

const GEOGRAPHIC =
  'GEOGCS["GCS_North_American_1983",DATUM["D_North_American_1983",SPHEROID["GRS_1980",6378137.0,298.257222101]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]]';
const MASSACHUSETTS = `PROJCS["NAD_1983_StatePlane_Massachusetts_Mainland_FIPS_2001_Feet",${GEOGRAPHIC},PROJECTION["Lambert_Conformal_Conic"],PARAMETER["False_Easting",656166.6666666665],PARAMETER["False_Northing",2460625.0],PARAMETER["Central_Meridian",-71.5],PARAMETER["Standard_Parallel_1",41.71666666666667],PARAMETER["Standard_Parallel_2",42.68333333333333],PARAMETER["Latitude_Of_Origin",41.0],UNIT["Foot_US",0.3048006096012192]]`;
const WEB_MERCATOR = `PROJCS["WGS_1984_Web_Mercator_Auxiliary_Sphere",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Mercator_Auxiliary_Sphere"],PARAMETER["Standard_Parallel_1",0.0],UNIT["Meter",1.0]]`;

describe('projections by well-known text', () => {
  it('reads State Plane in US survey feet as the EPSG code does', () => {
    const { toDegrees, name } = known(projectionFromWkt(MASSACHUSETTS));
    const [x, y] = known(projectionFromEpsg(2249)).fromDegrees([-71.11, 42.37]) ?? [0, 0];
    expect(toDegrees(x, y)?.[0]).toBeCloseTo(-71.11, 9);
    expect(toDegrees(x, y)?.[1]).toBeCloseTo(42.37, 9);
    expect(name).toContain('Massachusetts');
  });

  it('reads a compound system by its map part, and Web Mercator under any of its names', () => {
    const compound = `COMPD_CS["with heights",${MASSACHUSETTS},VERT_CS["NAVD88",VERT_DATUM["NAVD88",2005],UNIT["metre",1]]]`;
    expect(known(projectionFromWkt(compound)).toDegrees(750000, 2950000)).toEqual(
      known(projectionFromWkt(MASSACHUSETTS)).toDegrees(750000, 2950000),
    );
    const mercator = known(projectionFromWkt(WEB_MERCATOR)).toDegrees(-9228385.7868, 4880484.6657);
    expect(mercator?.[0]).toBeCloseTo(-82.9, 8);
    expect(mercator?.[1]).toBeCloseTo(40.1, 8);
  });

  it('takes degrees as they are, whatever order of axes the text speaks of', () => {
    const axes =
      'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563]],PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433],AXIS["Latitude",NORTH],AXIS["Longitude",EAST]]';
    expect(known(projectionFromWkt(axes)).toDegrees(-71.1, 42.3)).toEqual([-71.1, 42.3]);
    expect(known(projectionFromWkt(`\uFEFF${GEOGRAPHIC}\r\n`)).toDegrees(-71.1, 42.3)).toEqual([-71.1, 42.3]);
  });

  it.each([
    ['nothing', '', 'empty'],
    ['no WKT', 'hello', 'hello'],
    ['an unclosed text', 'PROJCS["x",GEOGCS["y"', 'neither'],
    ['a drawing', 'LOCAL_CS["a plan",UNIT["m",1]]', 'a plan'],
    ['an old datum', GEOGRAPHIC.replace('D_North_American_1983', 'D_North_American_1927'), 'D_North_American_1927'],
    ['Paris', GEOGRAPHIC.replace('"Greenwich",0.0', '"Paris",2.33722917'), 'Greenwich'],
    ['grads', GEOGRAPHIC.replace('"Degree",0.0174', '"Grad",0.0157'), 'Grad'],
    ['an unknown projection', MASSACHUSETTS.replace('Lambert_Conformal_Conic', 'Orange_Peel'), 'Massachusetts'],
    ['a hostile name', GEOGRAPHIC.replace('"Greenwich"', '"__proto__"'), 'no WKT'],
    ['too long a text', `${GEOGRAPHIC}${' '.repeat(20)}${'x'.repeat(20_000)}`, 'no WKT'],
  ])('does not know %s, and says why', (_, text, word) => {
    const reading = projectionFromWkt(text);
    expect(reading.kind).toBe('unknown');
    expect(reading.kind === 'unknown' && reading.why).toContain(word);
  });
});
