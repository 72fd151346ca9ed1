import type { FaceName } from '../drawing/typeface.ts'
import { type Carries, carriesFacts } from './label-sheets.ts'

/** The smallest type on any label, points. */
export const SMALLEST_TYPE_PT = 5.5
/**
 * The smallest type for a caution where the label has room, points: 7 CFR 201.31a (a) asks that treated seed be
 * labelled in type no smaller than 8 point.
 */
export const CAUTION_TYPE_PT = 8

interface Style {
  readonly face: FaceName
  readonly smallest: number
  readonly largest: number
}

export interface Styles {
  readonly crop: Style
  readonly species: Style
  readonly harvest: Style
  readonly variety: Style
  readonly lot: Style
  readonly fact: Style
  readonly caution: Style
  readonly foot: Style
}

/** Room for which the largest sizes below are meant: a label of 63.5 by 38.1 mm inside its margins, points. */
const USUAL_ROOM = Math.sqrt(168.7 * 96.7)

/** Where nothing but the number is printed, it is to be read across a room. */
const LARGEST_NUMBER_PT = 40

/** The styles of a label by its room in points: larger labels get larger type, the smallest sizes stay. */
export function stylesFor(width: number, height: number, carries: Carries): Styles {
  const tiny = !carriesFacts(carries)
  const scale = Math.min(1.55, Math.max(0.62, Math.sqrt(width * height) / USUAL_ROOM))
  const style = (face: FaceName, smallest: number, largest: number): Style => ({
    face,
    smallest,
    largest: Math.max(smallest, largest * scale),
  })
  return {
    crop: style('regular', SMALLEST_TYPE_PT, 8.5),
    species: style('italic', SMALLEST_TYPE_PT, 8.5),
    harvest: style('semibold', SMALLEST_TYPE_PT, 8.5),
    variety: style('semibold', tiny ? SMALLEST_TYPE_PT : 7.5, 16),
    lot: style('number', tiny ? 7 : 8, carries === 'number-only' ? LARGEST_NUMBER_PT : 15),
    fact: style('regular', SMALLEST_TYPE_PT, 8),
    caution: style('bold', CAUTION_TYPE_PT, 8.5),
    foot: style('regular', SMALLEST_TYPE_PT, 6.5),
  }
}

/** The size of a style at a place from 0 (smallest) to 1 (largest). */
export function sizeAt(style: Style, place: number): number {
  return style.smallest + place * (style.largest - style.smallest)
}
