import { type Message, message } from '../../messages/message.ts'

/**
 * Moisture as percent of the fresh (wet) weight, from percent of the dry weight: wet = 100 dry / (100 + dry).
 *
 * Throws RangeError unless dry is a number from 0.
 */
export function wetFromDry(dryPercent: number): number {
  if (!(dryPercent >= 0 && dryPercent < Number.POSITIVE_INFINITY))
    throw new RangeError(`Not a moisture on the dry basis: ${dryPercent}`)
  return (100 * dryPercent) / (100 + dryPercent)
}

/**
 * Moisture as percent of the dry weight, from percent of the fresh weight: dry = 100 wet / (100 - wet).
 *
 * Throws RangeError unless wet is from 0 to below 100.
 */
export function dryFromWet(wetPercent: number): number {
  if (!(wetPercent >= 0 && wetPercent < 100))
    throw new RangeError(`Not a moisture on the wet basis: ${wetPercent}`)
  return (100 * wetPercent) / (100 - wetPercent)
}

/** What the oven showed, in grams; the dish, where seed and dish were weighed together. */
export interface OvenMasses {
  readonly fresh: number
  readonly dry: number
  readonly dish: number
}

export type OvenMoisture =
  | { readonly kind: 'moisture'; readonly percent: number }
  | { readonly kind: 'refused'; readonly field: keyof OvenMasses; readonly because: Message }

/** Moisture of a sample weighed before and after an oven, percent of its fresh weight: 100 (fresh - dry) / fresh. */
export function ovenMoisture({ fresh, dry, dish }: OvenMasses): OvenMoisture {
  if (fresh <= dish) return refused('fresh', message('storage.oven-before'))
  if (dry <= dish) return refused('dry', message('storage.oven-after'))
  if (dry > fresh) return refused('dry', message('storage.oven-swapped'))
  return { kind: 'moisture', percent: (100 * (fresh - dry)) / (fresh - dish) }
}

function refused(field: keyof OvenMasses, because: Message): OvenMoisture {
  return { kind: 'refused', field, because }
}
