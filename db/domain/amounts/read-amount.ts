import { type Message, message } from '../../messages/message.ts'
import { splitAbout } from '../shared/about.ts'
import { withoutAccents } from '../shared/fold.ts'
import type { Amount } from './amount.ts'
import type { DecimalMark } from './in-words.ts'
import { type MassUnit, MILLIGRAMS_PER, massFrom } from './mass.ts'
import {
  type NumberReading,
  plainCharacters,
  readNumber,
  readWholeNumber,
  spellDecimal,
  withGrouping,
} from './read-number.ts'
import { seedCount } from './seed-count.ts'
import { COUNT_WORDS, MASS_WORDS, PACKET_WORDS, PLANT_WORDS } from './unit-words.ts'

/** A text that can be typed instead and reads one way only: as it is, and as it is told, which reads the same. */
export interface AmountChoice {
  readonly typed: string
  readonly told: Message | string
}

/** What a typed amount turned out to mean. */
export type AmountReading =
  | { readonly kind: 'amount'; readonly amount: Amount; readonly packets?: { packets: number; each: number } }
  | { readonly kind: 'ask'; readonly question: Message; readonly choices: readonly AmountChoice[] }
  | { readonly kind: 'unreadable'; readonly because: Message }

/** What is known where the amount is typed. */
export interface AmountContext {
  /** How many seeds the crop's packets usually hold. */
  readonly packetSeeds: number | null
  /** The library's decimal mark, which decides what 3.141 g is: a balance with milligrams shows that for three grams. */
  readonly decimalMark?: DecimalMark
}

/** A number and the word after it, as typed. */
interface Typed {
  readonly digits: string
  readonly unit: string | undefined
  readonly about: boolean
}

const LARGEST_KILOGRAMS = 100
const MOST_SEEDS = 100_000_000
const TWO_UNITS_LIKE_THIS = message('amount.two-units')
const PACKETS_LIKE_THIS = message('amount.packets-like')

/**
 * Reads an amount typed with its unit in one field, in any language that the app speaks: '12g', '12,5 g', '1/2 oz',
 * '2 lb 3 oz', '30 seeds', '30 semillas', '3 packets of 25', '3 sobres de 25', 'about 200', 'unas 200'.
 */
export function readAmount(typed: string, context: AmountContext): AmountReading {
  const text = withoutAccents(plainCharacters(typed).trim().toLowerCase())
  if (text === '') return unreadable(message('amount.how-much'))
  if (/^[-−–]/.test(text)) return unreadable(message('amount.below-zero'))
  const { about, rest } = splitAbout(text)
  const packets = /^(.+?)\s*([a-z]+)\s*(?:of|de|con|x|×|@)\s*(\S.*)$/.exec(rest)
  if (packets && PACKET_WORDS.has(packets[2] ?? ''))
    return readPackets(packets[1] ?? '', packets[3] ?? '', about)
  const twoUnits = /^(\d+)\s*([a-z]+)\.?\s*,?\s*(?:(?:and|y)\s+)?([\d.,\s/]+?)\s*([a-z]+)\.?$/.exec(rest)
  if (twoUnits && MASS_WORDS.has(twoUnits[2] ?? '') && !about) {
    const [, whole = '', large = '', more = '', small = ''] = twoUnits
    return readTwoUnits({ whole, large, more, small })
  }
  const parts = /^([\d.,'’\s/]+?)\s*([a-z]+\.?)?$/.exec(rest)
  if (!parts) return unreadable(message('amount.no-amount', { typed: typed.trim() }))
  return readNumberAndUnit({ digits: parts[1] ?? '', unit: parts[2]?.replace(/\.$/, ''), about }, context)
}

function readNumberAndUnit(typed: Typed, context: AmountContext): AmountReading {
  const { digits, unit, about } = typed
  const isMass = unit === undefined ? !about : MASS_WORDS.has(unit)
  const number = isMass ? readMassNumber(typed, context) : withGrouping(readNumber(digits))
  if (number.kind === 'unreadable') return unreadable(message('amount.no-number', { typed: digits }))
  if (number.kind === 'ask')
    return askWhich(
      message('amount.which-number', {
        typed: digits,
        grouped: String(number.grouped),
        decimal: String(number.decimal),
      }),
      meanings(number, unit),
      context,
      about ? 'always' : 'several',
    )
  if (unit === undefined && !about)
    return askWhich(
      message('amount.of-what', { typed: digits }),
      [plain(`${digits} g`), ofSeeds(digits)],
      context,
      'always',
    )
  if (unit === undefined || COUNT_WORDS.has(unit)) return readCount(number.value, about)
  if (PACKET_WORDS.has(unit)) return askPacketSize(number.value, about, context)
  if (PLANT_WORDS.has(unit)) return unreadable(message('pieces.plants-outside'))
  const massUnit = MASS_WORDS.get(unit)
  if (massUnit === undefined) return unreadable(message('amount.no-unit', { typed: unit }))
  if (!about) return readMass(number.value, massUnit)
  return askWhich(message('amount.was-it-weighed'), [plain(`${digits} ${unit}`)], context, 'always')
}

/** One mark before three digits is a decimal mark where the library writes it so and a unit of weight follows. */
function readMassNumber({ digits, unit }: Typed, { decimalMark }: AmountContext): NumberReading {
  const number = readNumber(digits)
  return number.kind === 'ask' &&
    unit !== undefined &&
    decimalMark !== undefined &&
    digits.includes(decimalMark)
    ? { kind: 'number', value: number.decimal }
    : number
}

/** The texts that an ambiguous mass, or a number without a unit, can stand for. */
function meanings(
  number: { readonly grouped: number; readonly decimal: number },
  unit: string | undefined,
): readonly AmountChoice[] {
  const masses = [number.grouped, spellDecimal(number.decimal)].map((value) =>
    plain(`${value} ${unit ?? 'g'}`),
  )
  return unit === undefined ? [ofSeeds(String(number.grouped)), ...masses] : masses
}

function plain(typed: string): AmountChoice {
  return { typed, told: typed }
}

function ofSeeds(number: string): AmountChoice {
  return { typed: `${number} seeds`, told: message('amount.type-seeds', { number }) }
}

/** Asks among the texts that can be meant at all; where only one can, there is nothing to ask unless 'always'. */
function askWhich(
  question: Message,
  choices: readonly AmountChoice[],
  context: AmountContext,
  when: 'several' | 'always' = 'several',
): AmountReading {
  const readings = choices.map((choice) => ({ choice, reading: readAmount(choice.typed, context) }))
  const possible = readings.filter(({ reading }) => reading.kind !== 'unreadable')
  const only = possible.length === 1 && when === 'several' ? possible[0] : undefined
  const settled = only ?? (possible.length === 0 ? readings[0] : undefined)
  return settled ? settled.reading : { kind: 'ask', question, choices: possible.map(({ choice }) => choice) }
}

function readMass(value: number, unit: MassUnit): AmountReading {
  if (value === 0) return nothing()
  if (value * MILLIGRAMS_PER[unit] > LARGEST_KILOGRAMS * MILLIGRAMS_PER.kg) {
    return unreadable(message('amount.too-heavy', { most: LARGEST_KILOGRAMS }))
  }
  const mass = massFrom(value, unit)
  if (mass === 0) return unreadable(message('amount.too-light'))
  return { kind: 'amount', amount: { kind: 'mass', mass } }
}

/** Pounds and ounces, or kilograms and grams: the larger a whole number, the smaller less than one of the larger. */
function readTwoUnits(typed: { whole: string; large: string; more: string; small: string }): AmountReading {
  const [large, small] = [MASS_WORDS.get(typed.large), MASS_WORDS.get(typed.small)]
  const more = readNumber(typed.more)
  const added = more.kind === 'ask' ? more.decimal : more.kind === 'number' ? more.value : null
  if (large === undefined || small === undefined || added === null) return unreadable(TWO_UNITS_LIKE_THIS)
  if (added * MILLIGRAMS_PER[small] >= MILLIGRAMS_PER[large]) return unreadable(TWO_UNITS_LIKE_THIS)
  const milligrams = Number(typed.whole) * MILLIGRAMS_PER[large] + added * MILLIGRAMS_PER[small]
  return readMass(milligrams, 'mg')
}

function readCount(value: number, estimated: boolean): AmountReading {
  if (!Number.isInteger(value)) return unreadable(message('amount.whole-numbers'))
  if (value > MOST_SEEDS) return unreadable(message('amount.too-many'))
  if (value === 0) return nothing()
  return { kind: 'amount', amount: { kind: 'count', count: seedCount(value), estimated } }
}

function readPackets(packetText: string, eachText: string, about: boolean): AmountReading {
  const inEach = splitAbout(eachText.replace(/\s*(?:each|cada un[oa]|c\/u)$/, ''))
  const parts = /^([\d.,'’\s]+?)\s*([a-z]+)?$/.exec(inEach.rest)
  const packets = readWholeNumber(packetText)
  const each = readWholeNumber(parts?.[1] ?? '')
  const counts = parts?.[2] === undefined || COUNT_WORDS.has(parts[2])
  if (packets === null || each === null || !counts) return unreadable(PACKETS_LIKE_THIS)
  const reading = readCount(packets * each, about || inEach.about)
  return reading.kind === 'amount' ? { ...reading, packets: { packets, each } } : reading
}

function askPacketSize(packets: number, about: boolean, context: AmountContext): AmountReading {
  if (!Number.isInteger(packets)) return unreadable(PACKETS_LIKE_THIS)
  const atLeast = readCount(packets * (context.packetSeeds ?? 1), about)
  if (atLeast.kind === 'unreadable') return atLeast
  const typed = `${about ? 'about ' : ''}${packets} ${packets === 1 ? 'packet' : 'packets'}`
  const each = String(context.packetSeeds)
  return {
    kind: 'ask',
    question: message('amount.packet-size', { packets }),
    choices:
      context.packetSeeds === null
        ? []
        : [
            {
              typed: `${typed} of ${each}`,
              told: message('amount.type-packets', { about: about ? 'yes' : 'no', packets, each }),
            },
          ],
  }
}

function nothing(): AmountReading {
  return unreadable(message('amount.zero'))
}

function unreadable(because: Message): AmountReading {
  return { kind: 'unreadable', because }
}
