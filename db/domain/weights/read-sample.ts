import { readAmount } from '../amounts/read-amount.ts'
import { readNumber } from '../amounts/read-number.ts'
import { seedCount } from '../amounts/seed-count.ts'
import type { WeighedSample } from './hundred-seed-weight.ts'

/** What a typed sample for the hundred-seed weight turned out to mean. */
export type SampleReading =
  | { readonly kind: 'empty' }
  | { readonly kind: 'sample'; readonly sample: WeighedSample }
  | { readonly kind: 'unreadable'; readonly because: string }

const HOW = 'Type a sample as 25 weigh 6.10 g: how many seeds, and what they weigh.'

/** Reads a counted and weighed sample: '25 weigh 6.10 g', '100 seeds = 2,5 g', '50: 1.2g'. */
export function readSample(typed: string): SampleReading {
  const text = typed.trim()
  if (text === '') return { kind: 'empty' }
  const parts = /^([\d\s.,'’]+?)\s*(?:[a-z]+\s+)?(?:weigh(?:s|ed|ing)?|=|:|in|are|at)\s*(.+)$/i.exec(text)
  if (!parts) return { kind: 'unreadable', because: HOW }
  const seeds = readNumber(parts[1] ?? '')
  const mass = readAmount(parts[2] ?? '', { packetSeeds: null })
  if (seeds.kind !== 'number' || !Number.isSafeInteger(seeds.value) || seeds.value < 1) {
    return { kind: 'unreadable', because: HOW }
  }
  if (mass.kind !== 'amount' || mass.amount.kind !== 'mass') {
    return { kind: 'unreadable', because: `Give the weight of the sample with its unit. ${HOW}` }
  }
  return { kind: 'sample', sample: { seeds: seedCount(seeds.value), mass: mass.amount.mass } }
}
