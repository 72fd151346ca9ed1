/** A label sheet that a library measured for itself. */
export const OWN_SHEET = {
  name: 'Jars, bottom shelf',
  pageWidthMm: 210,
  pageHeightMm: 297,
  columns: 2,
  rows: 5,
  widthMm: 90,
  heightMm: 50,
  leftMm: 12,
  topMm: 20,
  pitchXMm: 95,
  pitchYMm: 52,
}
