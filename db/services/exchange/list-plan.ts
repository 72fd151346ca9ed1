import type { Amount } from '../../domain/amounts/amount.ts'
import { harvestTold } from '../../domain/dates/harvest-year.ts'
import type { IsoDate } from '../../domain/dates/iso-date.ts'
import { isoDate, yearOf } from '../../domain/dates/iso-date.ts'
import { limitsInText } from '../../domain/terms/limits-in-text.ts'
import type { ListLayout } from '../../exchange/list-layout.ts'
import { type ListRow, listRow } from '../../exchange/list-row.ts'
import { treatmentSaid } from '../../exchange/list-treatment.ts'
import { type DecimalMark, decimalMarkOf, readListDay, readListYear } from '../../exchange/list-values.ts'
import { type DayMonthOrder, readMoment } from '../../exchange/logger-dates.ts'
import { english } from '../../messages/english.ts'
import { isMessage, type Message, message } from '../../messages/message.ts'
import { bothAmounts, listAmount, listSample } from './list-amounts.ts'
import type { ListBook, Named } from './list-book.ts'
import { LEFT_OUT, type ListGift, OPEN, type Outcome, type RowFate, refused } from './list-gift.ts'
import { cropNamed, type Found, personNamed, placeNamed, varietyNamed } from './list-names.ts'
import { LEAVE_OUT, LEAVE_OUT_CHOICE, ListQuestions } from './list-questions.ts'
import { heldAgainstBook, isThere, numberedAlike, onlyNamedSo, saidBefore } from './list-same.ts'
import { LONGEST_NAME, LONGEST_STORY, LONGEST_TERMS, namesIn, storyOf } from './list-story.ts'

export interface ListPlan {
  readonly gifts: readonly ListGift[]
  readonly fates: readonly RowFate[]
  readonly questions: ListQuestions
}

/** What holds for the whole list. */
interface Ways {
  readonly layout: ListLayout
  readonly order: DayMonthOrder | null
  readonly amountMark: DecimalMark | null
  readonly weightMark: DecimalMark | null
  readonly today: IsoDate
  /** Tells what is kept as a text in the book, in the library's language. */
  readonly say: (told: Message) => string
}

const TOTAL = /^(?:total|sum|summe|gesamt|somme|suma|subtotal|grand total)\b/i
/** Decides what becomes of every row of a list. Writes nothing, and asks where only the keeper knows. */
export function planList(
  rows: readonly (readonly string[])[],
  layout: ListLayout,
  book: ListBook,
  answers: Readonly<Record<string, string>>,
  today: IsoDate,
  say: (told: Message) => string,
): ListPlan {
  const questions = new ListQuestions(answers)
  const gifts: ListGift[] = []
  const fates: RowFate[] = []
  const seen = new Map<string, number>()
  const read = rows
    .slice(layout.headingRow + 1)
    .map((cells, index) => listRow(cells, layout.headingRow + 2 + index, layout))
  const ways = waysOf(read, layout, today, say)
  for (const [index, row] of read.entries()) {
    if (row === null) continue
    const number = layout.headingRow + 2 + index
    const cells = rows[number - 1] ?? []
    const whole = cells.map((cell) => cell.replace(/\s+/g, ' ').trim()).join('\n')
    const text = whole.replace(/\n+/g, ' ').trim().slice(0, 120)
    const outcome = isMessage(row) ? refused(row) : planRow(row, whole, ways, book, questions, seen)
    if ('gift' in outcome) {
      gifts.push(outcome.gift)
      fates.push({ row: number, fate: 'new', words: giftTold(outcome.gift), because: '' })
    } else fates.push({ row: number, words: text, ...outcome })
  }
  return { gifts, fates, questions }
}

function waysOf(
  read: readonly (ListRow | Message | null)[],
  layout: ListLayout,
  today: IsoDate,
  say: Ways['say'],
): Ways {
  const rows = read.filter((row): row is ListRow => row !== null && !isMessage(row))
  const cellsOf = (field: 'amount' | 'hundredWeight' | 'received') =>
    rows.map(({ cells }) => cells[field]).filter((cell) => cell !== '')
  const open = cellsOf('received')
    .flatMap((cell) => readMoment(cell) ?? [])
    .filter(({ either }) => either)
  const [dayFirst, monthFirst] = [
    open.some(({ first }) => first > 12),
    open.some(({ second }) => second > 12),
  ]
  const told = dayFirst ? 'day-first' : 'month-first'
  return {
    layout,
    order: dayFirst === monthFirst ? null : told,
    amountMark: decimalMarkOf(cellsOf('amount')),
    weightMark: decimalMarkOf(cellsOf('hundredWeight')),
    today,
    say,
  }
}

function planRow(
  row: ListRow,
  /** All of its cells, one to a line. */
  text: string,
  ways: Ways,
  book: ListBook,
  questions: ListQuestions,
  seen: Map<string, number>,
): Outcome {
  const { cells } = row
  if (TOTAL.test(text.trim())) return refused(message('import.totals'))
  const named = namesInRow(row)
  const former = formerNumber(row)
  const numbered = numberedAlike(row, former, book)
  const asNamed = onlyNamedSo(book, named)
  const there = numbered.find(({ varietyId }) => varietyId === asNamed)
  if (there !== undefined) return isThere(there.number)
  const crop = cropNamed(book, questions, row.row, named.crop, named.variety)
  if (crop === null) return refused(message('import.names-nothing'))
  if (crop === 'left-out') return LEFT_OUT
  if (crop === 'open') return OPEN
  if (named.variety === '') return refused(message('import.no-variety'))
  if ([named.variety, named.donor, cells.place].some((name) => name.length > LONGEST_NAME))
    return refused(message('import.name-too-long', { most: LONGEST_NAME }))
  const variety = varietyNamed(book, questions, row.row, crop, named.variety)
  const donor = personNamed(book, questions, row.row, named.donor, cells.donorTown)
  const place = placeNamed(book, questions, row.row, cells.place)
  const amount = listAmount(row, ways.layout.headings, crop, ways.amountMark, questions)
  const received = receivedOn(row, ways, questions)
  const settled = [variety, donor, place, amount, received]
  if (typeof amount === 'object' && 'because' in amount) return refused(amount.because)
  if (typeof received === 'object' && 'because' in received) return refused(received.because)
  const harvest = readListYear(cells.harvest, yearOf(ways.today))
  if (harvest.kind === 'unreadable') return refused(harvest.because)
  const told = listSample(row, ways.layout.headings, ways.weightMark)
  if (isMessage(told)) return refused(told)
  if (settled.includes('left-out')) return LEFT_OUT
  const again = saidBefore(text, row.row, questions, seen)
  if (again === 'left-out') return LEFT_OUT
  if (again === 'open' || settled.includes('open')) return OPEN
  const day = received as Exclude<Received, string | { because: Message }>
  const first = (amount as { amount: Amount | null }).amount
  const seed = bothAmounts(row, ways.layout.headings, ways.amountMark, first, told)
  const giver = donor === null ? null : { ...(donor as Exclude<Found<Named>, string>), town: cells.donorTown }
  const story = storyOf(row, { day, harvest: harvest.words, amount: seed.left, donor: giver }, ways.say)
  if (story.length > LONGEST_STORY) return refused(message('import.notes-too-long', { most: LONGEST_STORY }))
  const whole: ListGift = {
    row: row.row,
    crop,
    harvest: harvest.harvest,
    otherNames: namesIn(cells.otherNames),
    variety: variety as Exclude<Found<Named>, string>,
    donor: giver,
    place: place as Exclude<Found<Named>, string> | null,
    amount: seed.amount,
    sample: seed.sample,
    receivedOn: day.day,
    grownAt: cells.grownAt.slice(0, LONGEST_NAME),
    terms: cells.terms.slice(0, LONGEST_TERMS),
    limits: limitsInText(`${cells.terms}\n${row.passport.get('REMARKS') ?? ''}`, [ways.say, english.say]),
    story,
    treated: treatmentSaid(cells.treated, cells.note),
    passport: passportOf(row, former),
  }
  return heldAgainstBook(
    whole,
    numbered,
    cells.received !== '' || row.passport.has('ACQDATE'),
    book,
    questions,
  )
}

/** The names that a row gives, by its own columns before its descriptors. */
function namesInRow({ cells, passport }: ListRow) {
  const species = [passport.get('GENUS') ?? '', passport.get('SPECIES') ?? ''].join(' ').trim()
  const named = (passport.get('ACCENAME') ?? '').split(';')[0]?.trim() ?? ''
  return {
    crop: cells.crop || passport.get('CROPNAME') || species,
    variety: cells.variety || named || (passport.get('ACCENUMB') ?? ''),
    donor: cells.donor || (passport.get('DONORNAME') ?? ''),
  }
}

function formerNumber({ cells, passport }: ListRow): string | null {
  const number = passport.get('ACCENUMB') ?? cells.ownNumber
  return number === '' ? null : number
}

/** What is kept of a row for the day it goes out again: its descriptors, and the number it had before. */
function passportOf({ passport }: ListRow, former: string | null): ReadonlyMap<string, string> {
  if (former === null || passport.has('ACCENUMB')) return passport
  return new Map([...passport, ['OTHERNUMB', former]])
}

type Received =
  | { readonly day: string; readonly words?: string }
  | { readonly because: Message }
  | 'open'
  | 'left-out'

function receivedOn({ row, cells, passport }: ListRow, ways: Ways, questions: ListQuestions): Received {
  const cell = cells.received || (passport.get('ACQDATE') ?? '')
  if (cell === '') return { day: ways.today }
  const moment = readMoment(cell)
  const open =
    moment?.either === true && moment.first <= 12 && moment.second <= 12 && moment.first !== moment.second
  let order = ways.order
  if (open && order === null) {
    const answer = questions.ask(row, 'order', () => ({
      about: 'order',
      sentence: message('import.which-first', { cell }),
      choices: [
        { value: 'day-first', words: message('import.day-first') },
        { value: 'month-first', words: message('import.month-first') },
        LEAVE_OUT_CHOICE,
      ],
    }))
    if (answer === null) return 'open'
    if (answer === LEAVE_OUT) return 'left-out'
    order = answer as DayMonthOrder
  }
  const told = moment !== null && moment.first > 12 ? 'day-first' : 'month-first'
  const reading = readListDay(cell, order ?? told)
  if (reading.kind === 'unreadable') return { because: message('import.no-date', { cell }) }
  if (reading.kind === 'part') {
    const last = earlier(reading.last, ways.today)
    return last.slice(0, 4) < reading.last.slice(0, 4)
      ? { because: message('import.part-not-come', { when: reading.words }) }
      : { day: last, words: reading.words }
  }
  // Two digits of a year are of the century in which it has come already.
  const short = !/\d{4}/.test(cell) && reading.day > ways.today
  const day = short ? `${Number(reading.day.slice(0, 4)) - 100}${reading.day.slice(4)}` : reading.day
  return day > ways.today
    ? { because: message('import.day-not-come', { day: { day } }) }
    : { day: isoDate(day) }
}

function earlier(one: string, other: string): string {
  if (one < other) return one
  return other
}

function giftTold({ crop, variety, harvest, donor }: ListGift): Message {
  const nameOf = (named: Found<Named>) =>
    typeof named === 'string' ? '' : 'known' in named ? named.known.name : named.fresh
  return message('import.gift', {
    crop: crop.commonName,
    variety: nameOf(variety),
    harvest: harvestTold(harvest),
    given: donor === null ? 'no' : 'yes',
    donor: donor === null ? '' : nameOf(donor),
  })
}
