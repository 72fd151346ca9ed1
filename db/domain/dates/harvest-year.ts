import { type Message, message } from '../../messages/message.ts'
import { splitAbout } from '../shared/about.ts'
import { withoutAccents } from '../shared/fold.ts'

/** When seed was harvested: unknown, one year, a guess at a year, or a span of years. */
export type HarvestYear =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'year'; readonly year: number; readonly about: boolean }
  | { readonly kind: 'span'; readonly from: number; readonly to: number }

export type HarvestReading =
  | { readonly kind: 'harvest'; readonly harvest: HarvestYear }
  | { readonly kind: 'unreadable'; readonly because: Message }

const EARLIEST = 1800
/** What is typed where nobody knows the year, without accents, in the languages that the app speaks. */
const UNKNOWN_WORDS = new Set(
  (
    '|?|-|unknown|year unknown|not known|no idea|n/a|' +
    'desconocido|desconocida|ano desconocido|no se sabe|no lo se|ni idea|sin ano|sin fecha|s/f'
  ).split('|'),
)
/** Words before a year that say no more than the year: 'summer 2021', 'cosecha del verano de 2021'. */
const SEASON =
  /^(?:(?:early|mid|late|the|harvest|harvested|crop|year|a|principios|mediados|finales|fines|el|la|los|cosecha|cosechad[oa]|campana|ano|spring|summer|autumn|fall|winter|primavera|verano|otono|invierno)(?:\s+(?:of|in|from|de|del|en))?\s+)+(?=\d{4}$)/
/** A word for a guess that would be a packet before an amount. */
const ABOUT_A_YEAR = /^(?:sobre|por|hacia|alrededor de|cerca de)\s*(?:el ano\s+|el\s+)?(?=\d{4})/
const BETWEEN = /^(?:between|from|entre|de)\s+(?=\d{4}\D+\d)/

/**
 * Reads a harvest year as people write it, in any language that the app speaks: '2023', 'about 2019', 'hacia 2019',
 * 'verano de 2021', '2017-2019', '2018/19', 'unknown' or nothing.
 */
export function readHarvestYear(typed: string, thisYear: number): HarvestReading {
  const text = withoutAccents(typed.normalize('NFKC').trim().toLowerCase())
  if (UNKNOWN_WORDS.has(text)) return { kind: 'harvest', harvest: { kind: 'unknown' } }
  const span = /^(\d{4})\s*(?:-|–|\/|to|or|and|a|al|o|y|hasta)\s*(\d{2}|\d{4})$/.exec(
    text.replace(BETWEEN, ''),
  )
  if (span) return readSpan(Number(span[1]), span[2] ?? '', thisYear)
  const { about, rest } = splitAbout(text.replace(SEASON, '').replace(ABOUT_A_YEAR, '~'))
  const year = /^(\d{4})\s*(\?)?$/.exec(rest)
  if (!year) {
    return unreadable(message('harvest.not-a-year', { typed: typed.trim() }))
  }
  const value = Number(year[1])
  const guessed = about || year[2] !== undefined
  return inRange([value], thisYear) ?? harvest({ kind: 'year', year: value, about: guessed })
}

function readSpan(from: number, end: string, thisYear: number): HarvestReading {
  const century = Math.floor(from / 100) * 100
  // A season over the turn of a century: 1999/00.
  const turn = end === '00' && from % 100 === 99 ? 100 : 0
  const to = end.length === 2 ? century + turn + Number(end) : Number(end)
  if (to < from) {
    return unreadable(message('harvest.wrong-order', { from: String(from), to: String(to) }))
  }
  if (to === from) return inRange([from], thisYear) ?? harvest({ kind: 'year', year: from, about: false })
  return inRange([from, to], thisYear) ?? harvest({ kind: 'span', from, to })
}

/** A harvest year, for a label or a list: typed again it is read as the same. */
export function harvestTold(harvest: HarvestYear): Message | string {
  if (harvest.kind === 'unknown') return message('harvest.unknown')
  if (harvest.kind === 'span') return `${harvest.from}–${harvest.to}`
  return harvest.about ? message('harvest.about', { year: String(harvest.year) }) : String(harvest.year)
}

function inRange(years: readonly number[], thisYear: number): HarvestReading | null {
  const wrong = years.find((year) => year < EARLIEST || year > thisYear)
  if (wrong === undefined) return null
  return wrong > thisYear
    ? unreadable(message('harvest.not-come', { year: String(wrong) }))
    : unreadable(message('harvest.too-early', { year: String(wrong), earliest: String(EARLIEST) }))
}

function harvest(value: HarvestYear): HarvestReading {
  return { kind: 'harvest', harvest: value }
}

function unreadable(because: Message): HarvestReading {
  return { kind: 'unreadable', because }
}
