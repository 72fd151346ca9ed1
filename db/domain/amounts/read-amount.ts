import type { Amount } from './amount.ts'
import { type MassUnit, MILLIGRAMS_PER, massFrom } from './mass.ts'
import { readNumber, spellFractions } from './read-number.ts'
import { seedCount } from './seed-count.ts'

/** What a typed amount turned out to mean. `choices` are texts that can be typed instead and read one way only. */
export type AmountReading =
  | { readonly kind: 'amount'; readonly amount: Amount; readonly packets?: { packets: number; each: number } }
  | { readonly kind: 'ask'; readonly question: string; readonly choices: readonly string[] }
  | { readonly kind: 'unreadable'; readonly because: string }

const MASS_WORDS: Readonly<Record<string, MassUnit>> = {
  mg: 'mg',
  milligram: 'mg',
  milligrams: 'mg',
  g: 'g',
  gr: 'g',
  gm: 'g',
  gram: 'g',
  grams: 'g',
  gramme: 'g',
  grammes: 'g',
  kg: 'kg',
  kilo: 'kg',
  kilos: 'kg',
  kilogram: 'kg',
  kilograms: 'kg',
  oz: 'oz',
  ounce: 'oz',
  ounces: 'oz',
  lb: 'lb',
  lbs: 'lb',
  pound: 'lb',
  pounds: 'lb',
}
const COUNT_WORDS = new Set([
  'seed',
  'seeds',
  'bean',
  'beans',
  'kernel',
  'kernels',
  'grain',
  'grains',
  'cluster',
  'clusters',
  'fruit',
  'fruits',
  'pc',
  'pcs',
])
const PACKET_WORDS = new Set(['packet', 'packets', 'pack', 'packs', 'pkt', 'pkts', 'envelope', 'envelopes'])
const LARGEST_KILOGRAMS = 100
const MOST_SEEDS = 100_000_000

/** Reads an amount typed with its unit in one field: '12g', '12,5 g', '1/2 oz', '30 seeds', '3 packets of 25', 'about 200'. */
export function readAmount(typed: string, context: { readonly packetSeeds: number | null }): AmountReading {
  const text = spellFractions(typed).trim().toLowerCase()
  if (text === '')
    return unreadable('Type how much there is, with its unit: 12.5 g, 30 seeds or 3 packets of 25.')
  if (/^[-−]/.test(text))
    return unreadable('An amount cannot be below zero. Type how much there is, such as 12.5 g.')
  const about = /^(?:about|approx\.?|approximately|ca\.?|circa|roughly|around|~|≈)\s*/.exec(text)
  const rest = about ? text.slice(about[0].length) : text
  const packets = /^(.+?)\s*([a-z]+)\s*(?:of|x|×|@)\s*(\S.*)$/.exec(rest)
  if (packets && PACKET_WORDS.has(packets[2] ?? '')) return readPackets(packets[1] ?? '', packets[3] ?? '')
  const parts = /^([\d.,'’\s/]+?)\s*([a-z]+\.?)?$/.exec(rest)
  if (!parts)
    return unreadable(
      `'${typed.trim()}' is not an amount. Type a number and its unit: 12.5 g, 30 seeds or 3 packets of 25.`,
    )
  return readNumberAndUnit(parts[1] ?? '', parts[2]?.replace(/\.$/, ''), about !== null, context.packetSeeds)
}

function readNumberAndUnit(
  digits: string,
  unit: string | undefined,
  estimated: boolean,
  packetSeeds: number | null,
): AmountReading {
  const number = readNumber(digits)
  if (number.kind === 'unreadable')
    return unreadable(`'${digits.trim()}' is not a number. Type it like 12.5 or 12,5 or 1/2.`)
  const suffix = unit ?? ''
  if (number.kind === 'ask') {
    const wholeFirst = [number.grouped, number.decimal]
    return {
      kind: 'ask',
      question: `Is '${digits.trim()}' ${number.grouped} or ${number.decimal}?`,
      choices: wholeFirst.map((value) => unambiguous(value, suffix)),
    }
  }
  if (unit === undefined) {
    if (estimated) return readCount(number.value, true)
    return {
      kind: 'ask',
      question: `${number.value} of what?`,
      choices: [`${number.value} g`, ...(Number.isInteger(number.value) ? [`${number.value} seeds`] : [])],
    }
  }
  const massUnit = MASS_WORDS[unit]
  if (massUnit !== undefined) return readMass(number.value, massUnit)
  if (COUNT_WORDS.has(unit)) return readCount(number.value, estimated)
  if (PACKET_WORDS.has(unit)) return askPacketSize(number.value, packetSeeds)
  return unreadable(`'${unit}' is not a unit known here. Use g, mg, kg, oz, lb, seeds or packets.`)
}

function unambiguous(value: number, unit: string): string {
  if (Number.isInteger(value)) return unit === '' ? `${value} seeds` : `${value} ${unit}`
  if (MASS_WORDS[unit] === 'g') return `${Math.round(value * 1_000)} mg`
  return `${value}0 ${unit === '' ? 'g' : unit}`
}

function readMass(value: number, unit: MassUnit): AmountReading {
  if (value * MILLIGRAMS_PER[unit] > LARGEST_KILOGRAMS * MILLIGRAMS_PER.kg) {
    return unreadable(
      `More than ${LARGEST_KILOGRAMS} kg in one entry looks like a slip. Check the unit, or enter it in parts.`,
    )
  }
  const mass = massFrom(value, unit)
  if (mass === 0) return unreadable('That is less than a milligram. Count the seeds instead: 3 seeds.')
  return { kind: 'amount', amount: { kind: 'mass', mass } }
}

function readCount(value: number, estimated: boolean): AmountReading {
  if (!Number.isInteger(value))
    return unreadable('Seeds are counted in whole numbers. For a weight add its unit: 12.5 g.')
  if (value > MOST_SEEDS)
    return unreadable('That many seeds look like a slip. Check the number, or enter a weight.')
  if (value === 0)
    return unreadable('Zero seeds is not an amount. Leave the line out, or type how many there are.')
  return { kind: 'amount', amount: { kind: 'count', count: seedCount(value), estimated } }
}

function readPackets(packetDigits: string, eachText: string): AmountReading {
  const packets = readNumber(packetDigits)
  const each = readNumber(eachText.replace(/\s*(seeds?|each)\s*$/, ''))
  if (
    packets.kind !== 'number' ||
    each.kind !== 'number' ||
    !isCount(packets.value) ||
    !isCount(each.value)
  ) {
    return unreadable('Type packets as 3 packets of 25: whole numbers of packets and of seeds in each.')
  }
  const reading = readCount(packets.value * each.value, false)
  return reading.kind === 'amount'
    ? { ...reading, packets: { packets: packets.value, each: each.value } }
    : reading
}

function askPacketSize(packets: number, packetSeeds: number | null): AmountReading {
  if (!isCount(packets))
    return unreadable('Type packets as 3 packets of 25: whole numbers of packets and of seeds in each.')
  const word = packets === 1 ? 'packet' : 'packets'
  return {
    kind: 'ask',
    question: `How many seeds are in each ${packets === 1 ? 'packet' : `of the ${packets} packets`}?`,
    choices: packetSeeds === null ? [] : [`${packets} ${word} of ${packetSeeds}`],
  }
}

function isCount(value: number): boolean {
  return Number.isInteger(value) && value > 0
}

function unreadable(because: string): AmountReading {
  return { kind: 'unreadable', because }
}
