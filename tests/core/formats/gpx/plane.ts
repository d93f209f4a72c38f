/**
 * Metres of a degree at latitude 40 on WGS84, from the radii of curvature there:
 * N = a / sqrt(1 - e2 sin2), M = a (1 - e2) / (1 - e2 sin2)^1.5.
 */
export const ORIGIN = [-83, 40] as const;

const EQUATOR_RADIUS_M = 6378137;
const ECCENTRICITY_SQUARED = 0.00669437999014;
const sine = Math.sin((ORIGIN[1] * Math.PI) / 180);
const bend = 1 - ECCENTRICITY_SQUARED * sine * sine;

export const METRES_PER_DEGREE_EAST =
  ((EQUATOR_RADIUS_M / Math.sqrt(bend)) * Math.cos((ORIGIN[1] * Math.PI) / 180) * Math.PI) / 180;
export const METRES_PER_DEGREE_NORTH =
  ((EQUATOR_RADIUS_M * (1 - ECCENTRICITY_SQUARED)) / bend ** 1.5) * (Math.PI / 180);
