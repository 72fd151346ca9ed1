import type { Value } from '../contract/contract.ts'
import { refuse } from '../contract/refusal.ts'
import { countInWords } from '../domain/amounts/in-words.ts'
import { countedUnit } from '../domain/crops/counted-unit.ts'
import { type FlowingPart, flowingDocument } from '../paper/flowing-document.ts'
import { loadPaperFonts } from '../paper/fonts.ts'
import type { Paragraph } from '../paper/text-flow.ts'
import { lotFacts } from '../queries/lot-facts.ts'
import { type LotRow, lotsOfAccessions } from '../queries/lot-rows.ts'
import { accessionsToGive } from '../queries/year-figures.ts'
import type { Reading } from './context.ts'
import { dayOf } from './letters.ts'
import { standingOf } from './living-stock.ts'
import { cautionsOf, synonymsOf } from './lot-record.ts'
import { made } from './made-paper.ts'
import { settingsOf } from './settings.ts'

/** A packet where the crop has no usual size. Common practice, no source. */
const USUAL_PACKET = 20
/** A story on a list is a line or two; the rest is told at the table. */
const STORY_LETTERS = 240

interface Entry {
  readonly row: LotRow
  readonly packets: number
}

/** What can be had now: working seed beyond what must be kept to regrow it, nothing regulated, protected or doubtful. */
export async function printCatalogue(reading: Reading): Promise<Value<'catalogue.print'>> {
  const entries = entriesOf(reading)
  if (entries.length === 0) {
    refuse('value-refused', 'No seed can be spared now.', {
      todo: 'What is in quarantine, or needed to be grown again, is not put on the list.',
    })
  }
  const { libraryName, locale, paper } = settingsOf(reading)
  const printed = await flowingDocument({
    parts: [partOf(reading, entries)],
    paper,
    title: `Seed to be had, ${libraryName}`,
    language: locale,
    fonts: await loadPaperFonts(),
  })
  return { ...made(printed, `catalogue-${reading.today}.pdf`), listed: entries.length }
}

function entriesOf(reading: Reading): Entry[] {
  const policy = settingsOf(reading)
  const lots = Map.groupBy(
    lotsOfAccessions(reading.sqlite, accessionsToGive(reading.sqlite)),
    (row) => row.accession_id,
  )
  const entries = [...lots.values()].flatMap((rows): Entry[] => {
    const { living, keep } = standingOf(rows, policy)
    const row = rows.find(
      (lot) => lot.role === 'working' && lot.balance_count > 0 && lot.quarantine_reason === null,
    )
    if (row === undefined) return []
    const packets = Math.floor(Math.max(0, living.about - keep) / (row.packet_seeds ?? USUAL_PACKET))
    return packets === 0 ? [] : [{ row, packets }]
  })
  const name = ({ row }: Entry) => `${row.crop}\u0000${row.variety}`
  return entries.toSorted((one, other) => name(one).localeCompare(name(other), 'en'))
}

function partOf(reading: Reading, entries: readonly Entry[]): FlowingPart {
  const { libraryName } = settingsOf(reading)
  const text = (words: string, before: number, more: Partial<Paragraph> = {}): Paragraph => ({
    text: words,
    face: 'regular',
    size: 10,
    before,
    ...more,
  })
  const byCrop = [...Map.groupBy(entries, ({ row }) => row.crop)]
  return {
    name: 'The list',
    blocks: [
      text(libraryName, 0, { size: 9 }),
      text('Seed to be had', 2, { face: 'semibold', size: 18 }),
      text(
        `As it stands on ${dayOf(reading)(reading.today)}: ${entries.length} ${entries.length === 1 ? 'variety' : 'varieties'}. Seed that must be kept to be grown again is not listed. Ask at the table.`,
        2,
      ),
      ...byCrop.flatMap(([crop, here]) => [
        text(crop, 12, { face: 'semibold', size: 13, keptWithNext: true, ruled: true }),
        ...here.flatMap((entry) => entryParagraphs(reading, entry, text)),
      ]),
      text(
        'For sowing only, not for eating. Rules on sharing, labelling and selling seed differ by place: ask your local seed authority.',
        12,
        { size: 9, ruled: true },
      ),
    ],
  }
}

function entryParagraphs(
  reading: Reading,
  { row, packets }: Entry,
  text: (words: string, before: number, more?: Partial<Paragraph>) => Paragraph,
): Paragraph[] {
  const { story, credit_as } = lotFacts(reading.sqlite, row.lot_id)
  const synonyms = synonymsOf(reading, row.variety_id)
  const unit = countedUnit(row.crop_id)
  const tested =
    row.tested === null || row.sprouted === null
      ? 'not tested yet'
      : `${Math.round((100 * row.sprouted) / row.tested)} % sprouted, ${dayOf(reading)(row.tested_on ?? reading.today)}`
  const facts = [
    row.accession_number,
    packets > 9 ? 'plenty' : packets === 1 ? 'one packet' : `${packets} packets`,
    row.packet_seeds === null ? '' : `${countInWords(row.packet_seeds, unit)} each`,
    tested,
    credit_as === null || credit_as === '' ? '' : `from ${credit_as}`,
  ].filter((fact) => fact !== '')
  const cautions = cautionsOf(reading, row.accession_id)
  const cut = [...story].slice(0, STORY_LETTERS).join('')
  return [
    text([row.variety, ...synonyms].join(', also '), 6, { face: 'semibold', keptWithNext: true }),
    text(facts.join(' · '), 0, { size: 9 }),
    ...cautions.map((caution) => text(caution.text, 1, { face: 'bold', size: 9 })),
    ...(story === '' ? [] : [text(cut === story ? story : `${cut.trimEnd()}…`, 1)]),
  ]
}
