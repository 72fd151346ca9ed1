import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { packetSeeds } from '../../domain/amounts/packets.ts'
import { isOffered } from '../../domain/keeping/keeping.ts'
import type { CautionKind } from '../../domain/shared/closed-sets.ts'
import { mayBeOffered } from '../../domain/terms/gift-limits.ts'
import { type PublicEntry, publicPage } from '../../exchange/public-list.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { type FlowingPart, flowingDocument } from '../../paper/drawing/flowing-document.ts'
import { type Paragraph, paragraphsIn } from '../../paper/drawing/text-flow.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import { lotFacts } from '../../queries/lot-facts.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { accessionsToGive } from '../../queries/year-figures.ts'
import type { Reading } from '../book/context.ts'
import { livingOf, standingOf } from '../book/living-stock.ts'
import { cautionsTold, mustBeRead, synonymsOf } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { type Withholding, withholdingForAll } from '../people/withhold.ts'
import { documentFacts, made, paperTexts } from './document.ts'
import { cropOnPaper } from './seed-facts.ts'

/** A story on a list is a line or two; the rest is told at the table. */
const STORY_LETTERS = 240

const text = paragraphsIn(10)

interface Entry {
  readonly row: LotRow
  /** The lots that it is to be had of. */
  readonly lotIds: readonly number[]
  readonly packets: number
}

/** What anybody can have now: working seed beyond what must be kept to regrow it, nothing treated, regulated, protected or doubtful. */
export async function printCatalogue(reading: Reading): Promise<Result<'catalogue.print'>> {
  const entries = entriesOf(reading)
  const facts = await documentFacts(reading, message('paper.title-list'))
  const printed = await flowingDocument({ parts: [partOf(reading, entries, facts.texts)], ...facts })
  return { ...made(printed, `catalogue-${reading.today}.pdf`), listed: entries.length }
}

/** The same list as a page for everybody. */
export async function makeCataloguePage(reading: Reading): Promise<Result<'catalogue.export'>> {
  const texts = await paperTexts(reading)
  const entries = entriesOf(reading)
  const { libraryName } = settingsOf(reading)
  const withholding = withholdingForAll(reading, texts.say)
  const crops = byCrop(entries, texts).map(([name, here]) => ({
    name,
    entries: here.map((entry) => inWords(reading, withholding, entry, texts)),
  }))
  const html = publicPage({
    language: texts.locale,
    title: texts.text('paper.title-list-of', { library: libraryName }),
    about: aboutList(reading, entries, texts),
    crops,
    rulesHeading: texts.text('paper.list-before-sowing'),
    rules: texts.text('paper.list-rules'),
  })
  return { fileName: `seed-to-be-had-${reading.today}.html`, html, listed: entries.length }
}

function aboutList(reading: Reading, { length }: readonly Entry[], { text: told }: Texts): string {
  return told('paper.list-about', { day: { day: reading.today }, varieties: length })
}

/** Cautions with which seed is offered to everybody, in their words. */
const LISTED_WITH: ReadonlySet<CautionKind> = new Set(['toxic', 'possible-cross'])

/** Working seed that may be offered to everybody; a possible cross only where there is nothing surer. */
function listedOf(reading: Reading, rows: readonly LotRow[]): LotRow[] {
  const may = rows
    .filter(
      (lot) =>
        isOffered(lot.policy) &&
        lot.role === 'working' &&
        lot.balanceCount > 0 &&
        lot.quarantineReason === null &&
        mayBeOffered(limitsOfAccession(reading.sqlite, lot.accessionId)),
    )
    .map((row) => ({ row, cautions: cautionsTold(reading, [row.lotId]).map(({ caution }) => caution) }))
    .filter(({ cautions }) => cautions.every((caution) => LISTED_WITH.has(caution)))
  const sure = may.filter(({ cautions }) => !cautions.includes('possible-cross'))
  return (sure.length === 0 ? may : sure).map(({ row }) => row)
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
    const listed = listedOf(reading, rows)
    const [row] = listed
    if (row === undefined) return []
    const spare = Math.min(
      living.about - keep,
      listed.reduce((sum, lot) => sum + livingOf(lot), 0),
    )
    const packets = Math.floor(Math.max(0, spare) / packetSeeds(row.packetSeeds))
    return packets === 0 ? [] : [{ row, lotIds: listed.map(({ lotId }) => lotId), packets }]
  })
  if (entries.length === 0)
    refuse('nothing-to-print', message('print.no-seed-to-spare'), {
      todo: message('print.no-seed-to-spare-todo'),
    })
  const name = ({ row }: Entry) => `${row.crop}\u0000${row.variety}`
  return entries.toSorted((one, other) => name(one).localeCompare(name(other), 'en'))
}

function byCrop(entries: readonly Entry[], texts: Texts): [string, Entry[]][] {
  const groups = [...Map.groupBy(entries, ({ row }) => cropOnPaper(row.crop, texts))]
  return groups.toSorted(([one], [other]) => one.localeCompare(other, texts.locale))
}

function partOf(reading: Reading, entries: readonly Entry[], texts: Texts): FlowingPart {
  const { libraryName } = settingsOf(reading)
  const withholding = withholdingForAll(reading, texts.say)
  return {
    name: message('paper.the-list'),
    texts,
    blocks: [
      text(libraryName, 0, { size: 9 }),
      text(texts.text('paper.title-list'), 2, { face: 'semibold', size: 18 }),
      text(aboutList(reading, entries, texts), 2),
      ...byCrop(entries, texts).flatMap(([crop, here]) => [
        text(crop, 12, { face: 'semibold', size: 13, unbrokenWithNext: true, ruled: true }),
        ...here.flatMap((entry) => entryParagraphs(inWords(reading, withholding, entry, texts))),
      ]),
      text(texts.text('paper.list-rules'), 12, { size: 9, ruled: true }),
    ],
  }
}

/** An entry in words that name nobody but the donor, and the donor only as they wish. */
function inWords(
  reading: Reading,
  withholding: Withholding,
  { row, lotIds, packets }: Entry,
  texts: Texts,
): PublicEntry {
  const told = texts.text
  const { story, creditAs } = lotFacts(reading.sqlite, row.lotId)
  const limits = limitsOfAccession(reading.sqlite, row.accessionId)
  const synonyms = synonymsOf(reading, row.varietyId)
  const tested =
    row.tested === null || row.sprouted === null
      ? told('paper.list-not-tested')
      : told('paper.list-tested', {
          share: { part: row.sprouted / row.tested },
          day: { day: row.testedOn ?? reading.today },
        })
  const facts = [
    row.accessionNumber,
    packets > 9 ? told('paper.list-plenty') : told('paper.list-packets', { packets }),
    row.packetSeeds === null
      ? ''
      : told('paper.list-each', { amount: { seeds: row.packetSeeds, unit: row.countedUnit } }),
    tested,
    row.breeding === 'first-generation-hybrid' ? told('keeping.not-true') : '',
    !limits.publishName || creditAs === null || creditAs === ''
      ? ''
      : told('paper.packet-from', { donor: creditAs }),
  ].filter((fact) => fact !== '')
  const whole = limits.publishStory ? withholding.text(story) : ''
  const cut = [...whole].slice(0, STORY_LETTERS).join('')
  return {
    name:
      synonyms.length === 0
        ? row.variety
        : told('paper.list-also', { variety: row.variety, others: synonyms.join(', ') }),
    facts,
    cautions: mustBeRead(reading, lotIds).map(texts.say),
    story: cut === whole ? whole : `${cut.trimEnd()}…`,
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
