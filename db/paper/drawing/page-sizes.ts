export const INCH = 25.4
/** A point is 1/72 inch (ISO 32000-1, 8.3.2.3). */
export const POINTS_PER_MM = 72 / INCH

/** A page in points. A4: ISO 216. Letter: 8.5 by 11 inches (ANSI/ASME Y14.1 size A). */
export interface PageSize {
  readonly width: number
  readonly height: number
}

export type PaperName = 'a4' | 'letter'

export const PAGE_SIZES: Readonly<Record<PaperName, PageSize>> = {
  a4: { width: 210 * POINTS_PER_MM, height: 297 * POINTS_PER_MM },
  letter: { width: 612, height: 792 },
}
