import type { ParsedInput, Result } from '../../contract/contract.ts'
import type { YearFigures } from '../../contract/print-operations.ts'
import { wilsonInterval } from '../../domain/germination/wilson.ts'
import { type Message, message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
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
  const facts = await documentFacts(reading, message('paper.title-year', { year: `${year}` }))
  const printed = await flowingDocument({ parts: [partOf(reading, year, figures, facts.texts)], ...facts })
  return { ...made(printed, `year-${year}.pdf`), figures }
}

function named({ number, variety, crop }: NamedAccession): string {
  return `${crop} ‘${variety}’, ${number}`
}

function partOf(reading: Reading, year: number, figures: YearFigures, texts: Texts): FlowingPart {
  const { text: told } = texts
  const heading = (words: string) =>
    text(words, 12, { face: 'semibold', size: 13, unbrokenWithNext: true, ruled: true })
  const names = (list: readonly string[], none: string) =>
    list.length === 0 ? [text(none, 2)] : list.map((name) => text(name, 2, { indent: 10 }))
  const { gifts, donors, newPeople, takers, visits, seedsOut, lotsOut, returns, returners } = figures
  const people = [
    told('paper.year-new-people', { people: newPeople }),
    told('paper.year-takers', { people: takers, visits }),
  ]
  return {
    name: message('paper.the-report'),
    texts,
    blocks: [
      text(settingsOf(reading).libraryName, 0, { size: 9 }),
      text(told('paper.title-year', { year: `${year}` }), 2, { face: 'semibold', size: 18 }),
      ...(String(year) === reading.today.slice(0, 4) ? [text(told('paper.year-so-far'), 2)] : []),
      heading(told('paper.year-gifts')),
      text(told('paper.year-gifts-came', { gifts, donors }), 2),
      giftBars(reading, year, texts),
      heading(told('paper.year-people')),
      text(people.join(' '), 2),
      heading(told('paper.year-out')),
      text(told('paper.year-went-out', { seeds: seedsOut, lots: lotsOut }), 2),
      ...monthBars(reading, year, texts),
      ...cropBars(reading, year, texts),
      heading(told('paper.year-back')),
      text(told('paper.year-came-back', { lots: returns, people: returners }), 2),
      heading(told('paper.year-viability')),
      text(texts.say(viabilityTold(figures)), 2),
      heading(told('paper.year-saved')),
      ...names(figures.regrown, told('paper.year-none-saved')),
      heading(told('paper.year-lost')),
      ...names(figures.emptied, told('paper.year-none-lost')),
      text(told('paper.year-foot'), 12, { size: 9, ruled: true }),
    ],
  }
}

function giftBars(reading: Reading, year: number, { value }: Texts): Bars {
  return {
    bars: Array.from({ length: YEARS_DRAWN }, (_, index) => {
      const of = year - YEARS_DRAWN + 1 + index
      const { gifts } = yearCounts(reading.sqlite, of)
      return { label: `${of}`, value: gifts, words: value(gifts) }
    }),
  }
}

function monthBars(reading: Reading, year: number, { locale, value }: Texts): Bars[] {
  const found = outByMonth(reading.sqlite, year)
  if (found.length === 0) return []
  const month = new Intl.DateTimeFormat(locale, { month: 'long', timeZone: 'UTC' })
  return [
    {
      bars: Array.from({ length: 12 }, (_, index) => {
        const visits = found.find((row) => row.month === index + 1)?.visits ?? 0
        return { label: month.format(Date.UTC(year, index, 1)), value: visits, words: value(visits) }
      }),
    },
  ]
}

function cropBars(reading: Reading, year: number, texts: Texts): (Bars | Paragraph)[] {
  const crops = outByCrop(reading.sqlite, year)
  if (crops.length === 0) return []
  const words = text(texts.text('paper.year-asked-most'), 8, { unbrokenWithNext: true })
  const bars = crops.map(({ crop, packets }) => ({
    label: crop,
    value: packets,
    words: texts.value(packets),
  }))
  return [words, { bars }]
}

function viabilityTold({ tests, tested, sprouted }: YearFigures): Message {
  if (tests === 0) return message('paper.year-no-test')
  const [low, high] = wilsonInterval(sprouted, tested)
  return message('paper.year-tests', {
    tests,
    tested,
    sprouted,
    share: { part: sprouted / tested },
    low: { part: low },
    high: { part: high },
  })
}
