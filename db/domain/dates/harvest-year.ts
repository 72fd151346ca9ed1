import { splitAbout } from '../shared/about.ts'

/** When seed was harvested: unknown, one year, a guess at a year, or a span of years. */
export type HarvestYear =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'year'; readonly year: number; readonly about: boolean }
  | { readonly kind: 'span'; readonly from: number; readonly to: number }

export type HarvestReading =
  | { readonly kind: 'harvest'; readonly harvest: HarvestYear }
  | { readonly kind: 'unreadable'; readonly because: string }

const EARLIEST = 1800
const UNKNOWN_WORDS = new Set(['', '?', '-', 'unknown', 'year unknown', 'not known', 'no idea', 'n/a'])

/** Reads a harvest year as people write it: '2023', 'about 2019', '2017-2019', '2018/19', 'unknown' or nothing. */
export function readHarvestYear(typed: string, thisYear: number): HarvestReading {
  const text = typed.normalize('NFKC').trim().toLowerCase()
  if (UNKNOWN_WORDS.has(text)) return { kind: 'harvest', harvest: { kind: 'unknown' } }
  const span = /^(\d{4})\s*(?:-|–|\/|to|or)\s*(\d{2}|\d{4})$/.exec(text)
  if (span) return readSpan(Number(span[1]), span[2] ?? '', thisYear)
  const { about, rest } = splitAbout(text)
  const year = /^(\d{4})\s*(\?)?$/.exec(rest)
  if (!year) {
    return unreadable(
      `'${typed.trim()}' is not a harvest year. Type it like 2023, about 2019 or 2017-2019, or leave it empty.`,
    )
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
    return unreadable(
      `${from} comes after ${to}. For one year type ${from}; for several, the earlier first: 2017-2019.`,
    )
  }
  if (to === from) return inRange([from], thisYear) ?? harvest({ kind: 'year', year: from, about: false })
  return inRange([from, to], thisYear) ?? harvest({ kind: 'span', from, to })
}

/** A harvest year in words, for a label or a list. */
export function harvestInWords(harvest: HarvestYear): string {
  if (harvest.kind === 'unknown') return 'year unknown'
  if (harvest.kind === 'span') return `${harvest.from}–${harvest.to}`
  return harvest.about ? `about ${harvest.year}` : String(harvest.year)
}

function inRange(years: readonly number[], thisYear: number): HarvestReading | null {
  const wrong = years.find((year) => year < EARLIEST || year > thisYear)
  if (wrong === undefined) return null
  return wrong > thisYear
    ? unreadable(`${wrong} has not come yet. Check the harvest year.`)
    : unreadable(`${wrong} is before ${EARLIEST}. Check the harvest year, or leave it empty.`)
}

function harvest(value: HarvestYear): HarvestReading {
  return { kind: 'harvest', harvest: value }
}

function unreadable(because: string): HarvestReading {
  return { kind: 'unreadable', because }
}
