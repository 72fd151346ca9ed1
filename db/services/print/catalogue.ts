import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { countInWords } from '../../domain/amounts/in-words.ts'
import { packetSeeds } from '../../domain/amounts/packets.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import { type PublicEntry, publicPage } from '../../exchange/public-list.ts'
import { type FlowingPart, flowingDocument } from '../../paper/drawing/flowing-document.ts'
import { type Paragraph, paragraphsIn } from '../../paper/drawing/text-flow.ts'
import { lotFacts } from '../../queries/lot-facts.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { accessionsToGive } from '../../queries/year-figures.ts'
import type { Reading } from '../book/context.ts'
import { livingOf, standingOf } from '../book/living-stock.ts'
import { cautionsOf, synonymsOf } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { type Withholding, withholdingOf } from '../people/withhold.ts'
import { dayOf, documentFacts, made } from './document.ts'

/** A story on a list is a line or two; the rest is told at the table. */
const STORY_LETTERS = 240

const RULES =
  'For sowing only, not for eating. Rules on sharing, labelling and selling seed differ by place: ask your local seed authority.'

const text = paragraphsIn(10)

interface Entry {
  readonly row: LotRow
  readonly packets: number
}

/** What can be had now: working seed beyond what must be kept to regrow it, nothing treated, regulated, protected or doubtful. */
export async function printCatalogue(reading: Reading): Promise<Result<'catalogue.print'>> {
  const entries = entriesOf(reading)
  const printed = await flowingDocument({
    parts: [partOf(reading, entries)],
    ...(await documentFacts(reading, 'Seed available')),
  })
  return { ...made(printed, `catalogue-${reading.today}.pdf`), listed: entries.length }
}

/** The same list as a page for everybody. */
export function makeCataloguePage(reading: Reading): Result<'catalogue.export'> {
  const entries = entriesOf(reading)
  const { libraryName, locale } = settingsOf(reading)
  const withholding = withholdingOf(reading, { people: false, places: false })
  const crops = [...Map.groupBy(entries, ({ row }) => row.crop)].map(([name, here]) => ({
    name,
    entries: here.map((entry) => inWords(reading, withholding, entry)),
  }))
  const about = aboutList(reading, entries)
  const html = publicPage({ language: locale, library: libraryName, about, crops, rules: RULES })
  return { fileName: `seed-to-be-had-${reading.today}.html`, html, listed: entries.length }
}

function aboutList(reading: Reading, { length }: readonly Entry[]): string {
  return `As it stands on ${dayOf(reading)(reading.today)}: ${length} ${length === 1 ? 'variety' : 'varieties'}. Seed that must be kept to be grown again is not listed. Ask at the table.`
}

/** Working seed that may be offered to everybody; a poisonous plant is listed with its caution. */
function mayBeListed(reading: Reading, lot: LotRow): boolean {
  return (
    lot.role === 'working' &&
    lot.balanceCount > 0 &&
    lot.quarantineReason === null &&
    cautionsOf(reading, [lot.lotId]).every(({ caution }) => caution === 'toxic')
  )
}

/** What can be spared; refuses where nothing can. */
function entriesOf(reading: Reading): Entry[] {
  const policy = settingsOf(reading)
  const lots = Map.groupBy(
    lotsOfAccessions(reading.sqlite, accessionsToGive(reading.sqlite)),
    (row) => row.accessionId,
  )
  const entries = [...lots.values()].flatMap((rows): Entry[] => {
    const { living, keep } = standingOf(rows, policy)
    const listed = rows.filter((lot) => mayBeListed(reading, lot))
    const [row] = listed
    if (row === undefined) return []
    const spare = Math.min(
      living.about - keep,
      listed.reduce((sum, lot) => sum + livingOf(lot), 0),
    )
    const packets = Math.floor(Math.max(0, spare) / packetSeeds(row.packetSeeds))
    return packets === 0 ? [] : [{ row, packets }]
  })
  if (entries.length === 0)
    refuse('nothing-to-print', 'No seed can be spared now.', {
      todo: 'What is in quarantine, or needed to be grown again, is not put on the list.',
    })
  const name = ({ row }: Entry) => `${row.crop}\u0000${row.variety}`
  return entries.toSorted((one, other) => name(one).localeCompare(name(other), 'en'))
}

function partOf(reading: Reading, entries: readonly Entry[]): FlowingPart {
  const { libraryName } = settingsOf(reading)
  const withholding = withholdingOf(reading, { people: false, places: false })
  const byCrop = [...Map.groupBy(entries, ({ row }) => row.crop)]
  return {
    name: 'The list',
    blocks: [
      text(libraryName, 0, { size: 9 }),
      text('Seed available', 2, { face: 'semibold', size: 18 }),
      text(aboutList(reading, entries), 2),
      ...byCrop.flatMap(([crop, here]) => [
        text(crop, 12, { face: 'semibold', size: 13, unbrokenWithNext: true, ruled: true }),
        ...here.flatMap((entry) => entryParagraphs(inWords(reading, withholding, entry))),
      ]),
      text(RULES, 12, { size: 9, ruled: true }),
    ],
  }
}

/** An entry in words that name nobody but the donor, and the donor only as they wish. */
function inWords(reading: Reading, withholding: Withholding, { row, packets }: Entry): PublicEntry {
  const { story, creditAs } = lotFacts(reading.sqlite, row.lotId)
  const synonyms = synonymsOf(reading, row.varietyId)
  const unit = countedUnit(row.countedUnit)
  const tested =
    row.tested === null || row.sprouted === null
      ? 'not tested yet'
      : `${Math.round((100 * row.sprouted) / row.tested)} % sprouted, ${dayOf(reading)(row.testedOn ?? reading.today)}`
  const facts = [
    row.accessionNumber,
    packets > 9 ? 'plenty' : packets === 1 ? 'one packet' : `${packets} packets`,
    row.packetSeeds === null ? '' : `${countInWords(row.packetSeeds, unit, settingsOf(reading))} each`,
    tested,
    creditAs === null || creditAs === '' ? '' : `from ${creditAs}`,
  ].filter((fact) => fact !== '')
  const told = withholding.text(story)
  const cut = [...told].slice(0, STORY_LETTERS).join('')
  return {
    name: [row.variety, ...synonyms].join(', also '),
    facts,
    cautions: cautionsOf(reading, [row.lotId]).map(({ text }) => text),
    story: cut === told ? told : `${cut.trimEnd()}…`,
  }
}

function entryParagraphs({ name, facts, cautions, story }: PublicEntry): Paragraph[] {
  return [
    text(name, 6, { face: 'semibold', unbrokenWithNext: true }),
    text(facts.join(' · '), 0, { size: 9 }),
    ...cautions.map((caution) => text(caution, 1, { face: 'bold', size: 9 })),
    ...(story === '' ? [] : [text(story, 1)]),
  ]
}
