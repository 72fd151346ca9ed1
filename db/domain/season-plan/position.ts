/** Where a site lies: metres east and north of any one point that all sites share. */
export interface Position {
  readonly east: number
  readonly north: number
}

/** Mean radius of the earth, metres (IUGG, from memory). */
const EARTH = 6_371_009

/**
 * The place of a latitude and longitude, degrees, on a flat map round another: good to a part in a thousand within 50 km.
 *
 * Throws RangeError beyond 90 or 180 degrees.
 */
export function positionOf(
  latitude: number,
  longitude: number,
  round: { latitude: number; longitude: number },
): Position {
  if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) {
    throw new RangeError(`Not a place on the earth: ${latitude}, ${longitude}`)
  }
  const radians = (degrees: number) => (degrees * Math.PI) / 180
  return {
    east: EARTH * radians(longitude - round.longitude) * Math.cos(radians((latitude + round.latitude) / 2)),
    north: EARTH * radians(latitude - round.latitude),
  }
}

/** Metres between two sites in a straight line. */
export function metresBetween(a: Position, b: Position): number {
  return Math.hypot(a.east - b.east, a.north - b.north)
}
