import type { Amount } from '../../domain/amounts/amount.ts'
import { massFrom } from '../../domain/amounts/mass.ts'
import { type AmountChoice, readAmount } from '../../domain/amounts/read-amount.ts'
import { readNumber } from '../../domain/amounts/read-number.ts'
import { seedCount } from '../../domain/amounts/seed-count.ts'
import type { WeighedSample } from '../../domain/weights/hundred-seed-weight.ts'
import { readSample, sampleOf } from '../../domain/weights/read-sample.ts'
import { isOfThousand, unitOfHeading } from '../../exchange/list-fields.ts'
import type { ListRow } from '../../exchange/list-row.ts'
import { type DecimalMark, withMark } from '../../exchange/list-values.ts'
import { type Message, message } from '../../messages/message.ts'
import type { KnownCrop } from '../../queries/list-rows.ts'
import { LEAVE_OUT, LEAVE_OUT_CHOICE, type ListQuestions } from './list-questions.ts'

/** How much seed a row says there is: an amount, none yet, nothing until a question is answered, or why it cannot be read. */
export type ListAmount =
  | { readonly amount: Amount | null }
  | 'open'
  | 'left-out'
  | { readonly because: Message }

const BARE = /^(?:(?:about|approx\.?|circa|ca?\.?|un[oa]s|~|≈)\s*)?[\d.,'’\s/½¼¾]+$/i
const NONE = /^(?:0+(?:[.,]0+)?\s*[a-z]*|none|empty|nil|nada|ningun[oa]|vac[ií][oa]|-)$/i
const UNITS = ['g', 'seeds', 'packets', 'oz', 'kg', 'mg'] as const

/** Reads the amount of a row with the unit of its heading, asking where a unit, a packet or a decimal mark is not clear. */
export function listAmount(
  { row, cells, from }: ListRow,
  headings: readonly string[],
  crop: KnownCrop,
  mark: DecimalMark | null,
  questions: ListQuestions,
): ListAmount {
  const cell = withMark(cells.amount, mark)
  if (cell === '' || NONE.test(cell)) return withoutAmount(row, questions)
  const heading = headings[from.amount ?? -1] ?? ''
  let typed = cell
  if (BARE.test(cell)) {
    const unit = unitOfHeading(heading) ?? unitAsked(row, heading, cell, questions)
    if (unit === null) return 'open'
    if (unit === LEAVE_OUT) return 'left-out'
    typed = `${cell} ${unit}`
  }
  const reading = readAmount(typed, { packetSeeds: crop.packetSeeds })
  if (reading.kind === 'amount') return { amount: reading.amount }
  if (reading.kind === 'unreadable') return { because: reading.because }
  const inPackets = /\b(?:pa?c?k(?:e?t)?s?|envelopes?|sobres?)$/i.test(typed)
  const answer = inPackets ? packetAsked(row, crop, questions) : amountAsked(row, typed, reading, questions)
  if (answer === null) return 'open'
  if (answer === LEAVE_OUT) return 'left-out'
  const settled = readAmount(inPackets ? `${typed} of ${answer}` : answer, { packetSeeds: crop.packetSeeds })
  return settled.kind === 'amount'
    ? { amount: settled.amount }
    : { because: message('import.no-amount', { cell: cells.amount }) }
}

function withoutAmount(row: number, questions: ListQuestions): ListAmount {
  const answer = questions.ask(row, 'no-amount', () => ({
    about: 'no-amount',
    sentence: message('import.how-without-amount'),
    choices: [{ value: 'empty', words: message('import.without-amount') }, LEAVE_OUT_CHOICE],
  }))
  if (answer === null) return 'open'
  return answer === LEAVE_OUT ? 'left-out' : { amount: null }
}

function unitAsked(row: number, heading: string, cell: string, questions: ListQuestions): string | null {
  return questions.ask(row, `unit:${heading.toLowerCase()}`, () => ({
    about: 'unit',
    sentence:
      heading === ''
        ? message('import.unit-of-amounts', { cell })
        : message('import.unit-under', { heading, cell }),
    choices: [...UNITS.map((value) => ({ value, words: message(`import.unit.${value}`) })), LEAVE_OUT_CHOICE],
  }))
}

function packetAsked(row: number, crop: KnownCrop, questions: ListQuestions): string | null {
  const usual = crop.packetSeeds
  const sizes = [...new Set([...(usual === null ? [] : [usual]), 10, 20, 25, 30, 50, 100])]
  return questions.ask(row, `packets:${crop.id}`, () => ({
    about: 'packets',
    sentence: message('import.packet-of', { crop: crop.commonName }),
    choices: [
      ...sizes.map((size) => ({
        value: String(size),
        words: size === usual ? message('import.packet-usual', { seeds: size }) : String(size),
      })),
      LEAVE_OUT_CHOICE,
    ],
  }))
}

function amountAsked(
  row: number,
  typed: string,
  reading: { readonly question: Message; readonly choices: readonly AmountChoice[] },
  questions: ListQuestions,
): string | null {
  return questions.ask(row, `amount:${typed.toLowerCase()}`, () => ({
    about: 'amount',
    sentence: reading.question,
    choices: [
      ...reading.choices.map(({ typed: value, told: words }) => ({ value, words })),
      LEAVE_OUT_CHOICE,
    ],
  }))
}

/** What a row says of its seed by both of its amounts. */
export interface BothAmounts {
  readonly amount: Amount | null
  /** The seeds and what they weigh together, where one amount counts what the other weighs. */
  readonly sample: WeighedSample | null
  /** The second amount as it is written, where it adds nothing that is kept otherwise; empty where there is none. */
  readonly left: Message | string
}

/**
 * Puts the seeds of a row and what they weigh together: the weighed amount counts, and both give the seed weight.
 *
 * A sample that the list gives is the better measurement: the second amount is only told then.
 */
export function bothAmounts(
  { other }: ListRow,
  headings: readonly string[],
  mark: DecimalMark | null,
  first: Amount | null,
  told: WeighedSample | null,
): BothAmounts {
  if (other === null) return { amount: first, sample: told, left: '' }
  const heading = headings[other.column] ?? ''
  const cell = withMark(other.amount, mark)
  const unit = BARE.test(cell) ? unitOfHeading(heading) : ''
  const read = unit === null ? null : readAmount(`${cell} ${unit}`.trim(), { packetSeeds: null })
  const second = read?.kind === 'amount' ? read.amount : null
  const asTold = {
    amount: first,
    sample: told,
    left:
      heading === '' ? message('import.story.also', { text: other.amount }) : `${heading}: ${other.amount}`,
  }
  if (first === null || second === null || told !== null || first.kind === second.kind) return asTold
  const [weighed, counted] = first.kind === 'mass' ? [first, second] : [second, first]
  if (weighed.kind !== 'mass' || counted.kind !== 'count' || counted.estimated) return asTold
  const both = sampleOf(counted.count, weighed.mass)
  return both.kind === 'sample' ? { amount: weighed, sample: both.sample, left: '' } : asTold
}

/** The weighed sample that gives a row its hundred-seed weight: null where it has none, a message where it cannot be read. */
export function listSample(
  { cells, from }: ListRow,
  headings: readonly string[],
  mark: DecimalMark | null,
): WeighedSample | null | Message {
  const sample = readSample(cells.sample)
  if (sample.kind === 'sample') return sample.sample
  if (sample.kind === 'unreadable') return sample.because
  const cell = withMark(cells.hundredWeight, mark).replace(/\s*(?:g|gr|grams?)\.?$/i, '')
  if (cell === '') return null
  const number = readNumber(cell)
  const seeds = isOfThousand(headings[from.hundredWeight ?? -1] ?? '') ? 1_000 : 100
  if (number.kind !== 'number' || number.value < 0.001 || number.value > 5 * seeds)
    return message('import.no-weight', { cell: cells.hundredWeight, seeds })
  return { seeds: seedCount(seeds), mass: massFrom(number.value, 'g') }
}
