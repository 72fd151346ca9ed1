import type { ParsedInput, Result } from '../../contract/contract.ts'
import type { YearFigures } from '../../contract/print-operations.ts'
import { numberInWords } from '../../domain/amounts/in-words.ts'
import { wilsonInterval } from '../../domain/germination/wilson.ts'
import { type Bars, type FlowingPart, flowingDocument } from '../../paper/drawing/flowing-document.ts'
import { type Paragraph, paragraphsIn } from '../../paper/drawing/text-flow.ts'
import {
  emptiedIn,
  type NamedAccession,
  outByCrop,
  outByMonth,
  regrownIn,
  yearCounts,
} from '../../queries/year-figures.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { documentFacts, made } from './document.ts'

/** Years of gifts that are drawn, the report's own the last. */
const YEARS_DRAWN = 5

const text = paragraphsIn(10.5)

/** The report of a calendar year, in figures and pictures, without anybody's name. */
export async function printYearReport(
  reading: Reading,
  { year }: ParsedInput<'report.print'>,
): Promise<Result<'report.print'>> {
  const figures: YearFigures = {
    ...yearCounts(reading.sqlite, year),
    emptied: emptiedIn(reading.sqlite, year).map(named),
    regrown: regrownIn(reading.sqlite, year).map(named),
  }
  const printed = await flowingDocument({
    parts: [partOf(reading, year, figures)],
    ...(await documentFacts(reading, `The year ${year}`)),
  })
  return { ...made(printed, `year-${year}.pdf`), figures }
}

function named({ number, variety, crop }: NamedAccession): string {
  return `${crop} ‘${variety}’, ${number}`
}

function partOf(reading: Reading, year: number, figures: YearFigures): FlowingPart {
  const { libraryName, locale } = settingsOf(reading)
  const number: Written = (value) => numberInWords(value, { locale })
  const count = (value: number, one: string, many: string) => `${number(value)} ${value === 1 ? one : many}`
  const heading = (words: string) =>
    text(words, 12, { face: 'semibold', size: 13, unbrokenWithNext: true, ruled: true })
  const names = (list: readonly string[], none: string) =>
    list.length === 0 ? [text(none, 2)] : list.map((name) => text(name, 2, { indent: 10 }))
  return {
    name: 'The report',
    blocks: [
      text(libraryName, 0, { size: 9 }),
      text(`The year ${year}`, 2, { face: 'semibold', size: 18 }),
      ...(String(year) === reading.today.slice(0, 4) ? [text('As far as the year has gone.', 2)] : []),
      heading('Gifts'),
      text(
        `${count(figures.gifts, 'gift', 'gifts')} of seed came in, from ${count(figures.donors, 'donor', 'donors')} known by name.`,
        2,
      ),
      giftBars(reading, year, number),
      heading('People'),
      text(
        `${count(figures.newPeople, 'person is', 'people are')} new in the book. ${count(figures.takers, 'person', 'people')} took seed on ${count(figures.visits, 'visit', 'visits')}.`,
        2,
      ),
      heading('Seed out'),
      text(
        `About ${count(figures.seedsOut, 'seed', 'seeds')} of ${count(figures.lotsOut, 'lot', 'lots')} went out.`,
        2,
      ),
      ...monthBars(reading, year, locale, number),
      ...cropBars(reading, year, number),
      heading('Seed back'),
      text(
        `${count(figures.returns, 'lot', 'lots')} came back from ${count(figures.returners, 'person', 'people')}.`,
        2,
      ),
      heading('Viability'),
      text(viabilityWords(figures, number), 2),
      heading('Saved: grown again'),
      ...names(figures.regrown, 'Nothing was grown again that came back this year.'),
      heading('Lost: no seed left'),
      ...names(figures.emptied, 'Nothing ran out.'),
      text(
        'Counted from the book; what was taken back does not count. Seed that was weighed is counted by its hundred-seed weight.',
        12,
        { size: 9, ruled: true },
      ),
    ],
  }
}

type Written = (value: number) => string

function giftBars(reading: Reading, year: number, number: Written): Bars {
  return {
    bars: Array.from({ length: YEARS_DRAWN }, (_, index) => {
      const of = year - YEARS_DRAWN + 1 + index
      const { gifts } = yearCounts(reading.sqlite, of)
      return { label: `${of}`, value: gifts, words: number(gifts) }
    }),
  }
}

function monthBars(reading: Reading, year: number, locale: string, number: Written): Bars[] {
  const found = outByMonth(reading.sqlite, year)
  if (found.length === 0) return []
  const month = new Intl.DateTimeFormat(locale, { month: 'long', timeZone: 'UTC' })
  return [
    {
      bars: Array.from({ length: 12 }, (_, index) => {
        const visits = found.find((row) => row.month === index + 1)?.visits ?? 0
        return { label: month.format(Date.UTC(year, index, 1)), value: visits, words: number(visits) }
      }),
    },
  ]
}

function cropBars(reading: Reading, year: number, number: Written): (Bars | Paragraph)[] {
  const crops = outByCrop(reading.sqlite, year)
  if (crops.length === 0) return []
  const words = text('Asked for most, in packets:', 8, { unbrokenWithNext: true })
  const bars = crops.map(({ crop, packets }) => ({
    label: crop,
    value: packets,
    words: number(packets),
  }))
  return [words, { bars }]
}

function viabilityWords({ tests, tested, sprouted }: YearFigures, number: Written): string {
  if (tests === 0) return 'No germination test was finished.'
  const [low, high] = wilsonInterval(sprouted, tested)
  const percent = (part: number) => `${Math.round(100 * part)} %`
  const share = `${number(sprouted)} of ${number(tested)} seeds sprouted, ${percent(sprouted / tested)}`
  return `${number(tests)} ${tests === 1 ? 'test was' : 'tests were'} finished: ${share} (95 % interval ${percent(low)} to ${percent(high)}, if all lots were alike).`
}
