import { type Message, message } from '../../messages/message.ts'
import type { DecimalMark } from '../amounts/in-words.ts'
import { MILLIGRAMS_PER, massFrom } from '../amounts/mass.ts'
import { plainCharacters, readNumber, readWholeNumber, spellDecimal } from '../amounts/read-number.ts'
import { seedCount } from '../amounts/seed-count.ts'
import { MASS_WORDS } from '../amounts/unit-words.ts'
import type { WeighedSample } from './hundred-seed-weight.ts'

/** What a typed sample for the hundred-seed weight turned out to mean. */
export type SampleReading =
  | { readonly kind: 'empty' }
  | { readonly kind: 'sample'; readonly sample: WeighedSample }
  | { readonly kind: 'unreadable'; readonly because: Message }

/** No seed of a garden crop weighs as much (common practice, no source): it tells 25 seeds of 6.102 g from 6102 g. */
const HEAVIEST_SEED_MG = 5_000
/** A sample, like any entry, is a slip beyond 100 kg. */
const HEAVIEST_SAMPLE_MG = 100_000_000
/** A hundred of these weigh a microgram, the least that a hundred-seed weight can be. */
const LIGHTEST_SEED_MG = 0.000_01

/**
 * Reads a counted and weighed sample: '25 weigh 6.10 g', '25 semillas pesan 6,10 g', '100 seeds = 2,5 g', '50: 1.2g'.
 *
 * A library's decimal mark, where it is known, tells 6.102 g from 6,102 g.
 */
export function readSample(typed: string, decimalMark?: DecimalMark): SampleReading {
  const text = plainCharacters(typed).trim().toLowerCase()
  if (text === '') return { kind: 'empty' }
  const parts =
    /^([\d\s.,'’]+?)\s*(?:[a-z]+\s*)?(?:weigh(?:s|ed|ing)?|pesa(?:n|ron)?|=|:|in|are|at)\s*([\d\s.,'’/]+?)\s*([a-z]*)\.?$/.exec(
      text,
    )
  const seeds = readWholeNumber(parts?.[1] ?? '')
  const number = readNumber(parts?.[2] ?? '')
  if (seeds === null || number.kind === 'unreadable') return unreadable(message('amount.sample-like'))
  const unit = MASS_WORDS.get(parts?.[3] ?? '')
  if (unit === undefined) return unreadable(message('amount.sample-unit'))
  const inMg = (value: number) => value * MILLIGRAMS_PER[unit]
  if (number.kind === 'number') return sampleOf(seeds, inMg(number.value))
  const { grouped, decimal } = number
  if (decimalMark !== undefined && (parts?.[2] ?? '').includes(decimalMark))
    return sampleOf(seeds, inMg(decimal))
  if (inMg(grouped) > seeds * HEAVIEST_SEED_MG) return sampleOf(seeds, inMg(decimal))
  return unreadable(
    message('amount.sample-which', {
      grouped: String(grouped),
      decimal: String(decimal),
      asGrouped: `${grouped} ${unit}`,
      asDecimal: `${spellDecimal(decimal)} ${unit}`,
    }),
  )
}

/** A sample of so many seeds and milligrams; unreadable where no seeds weigh that. */
export function sampleOf(seeds: number, mg: number): SampleReading {
  if (mg > HEAVIEST_SAMPLE_MG || mg < 0.5 || mg < seeds * LIGHTEST_SEED_MG) {
    return unreadable(message('amount.sample-unfit'))
  }
  return { kind: 'sample', sample: { seeds: seedCount(seeds), mass: massFrom(mg, 'mg') } }
}

function unreadable(because: Message): SampleReading {
  return { kind: 'unreadable', because }
}
