import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { harvestInWords } from '../../domain/dates/harvest-year.ts'
import { scanCode } from '../../domain/numbers/scan-code.ts'
import { isEnvelope, labelsOnSheet } from '../../paper/packets/label-sheets.ts'
import { packetLabels } from '../../paper/packets/packet-labels.ts'
import type { PacketLabel } from '../../paper/packets/packet-text.ts'
import { moistureOfLot } from '../../queries/lot-climate.ts'
import { type LotFacts, lotFacts } from '../../queries/lot-facts.ts'
import type { LotRow } from '../../queries/lot-rows.ts'
import { quantityOf } from '../book/amounts.ts'
import type { Reading } from '../book/context.ts'
import { sheetOrRefuse } from '../book/label-sheets.ts'
import { harvestOf, lotOrRefuse } from '../book/new-lot.ts'
import { cautionsOf, synonymsOf } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { type Withholding, withholdingOf } from '../people/withhold.ts'
import { dayOf, documentFacts, made } from './document.ts'

/** Labels of lots on a sheet, from any label of it on. Refuses an unknown sheet or lot, and a start off the sheet. */
export async function printLabels(
  reading: Reading,
  input: ParsedInput<'label.print'>,
): Promise<Result<'label.print'>> {
  const sheet = sheetOrRefuse(reading, input.sheet, 'sheet')
  const perSheet = labelsOnSheet(sheet)
  if (input.startAt > perSheet) {
    refuse('off-the-sheet', `That sheet has ${perSheet} labels. Start at one of them.`, { field: 'startAt' })
  }
  const facts = await documentFacts(reading, 'Packet labels')
  const goesOut = sheet.folded === true || isEnvelope(sheet)
  const withholding = goesOut ? withholdingOf(reading, { people: false, places: false }) : null
  const labels = input.labels.flatMap(({ lotId, copies, contents }, index) => {
    const label = labelOf(reading, lotId, contents, facts.libraryName, `labels.${index}.lotId`, withholding)
    return Array.from({ length: copies }, () => label)
  })
  const printed = await packetLabels({
    labels,
    sheet: input.says === 'number-only' ? { ...sheet, carries: 'number-only', folded: false } : sheet,
    startAt: input.startAt,
    offsetMm: input.offsetMm,
    cropMarks: input.cropMarks,
    ...facts,
  })
  return made(printed, `labels-${reading.today}.pdf`)
}

function labelOf(
  reading: Reading,
  lotId: number,
  contents: string,
  libraryName: string,
  field: string,
  /** What a packet that goes out does not say; null for one that stays on the shelf. */
  withholding: Withholding | null,
): PacketLabel {
  const row = lotOrRefuse(reading, lotId, field)
  const facts = lotFacts(reading.sqlite, lotId)
  return {
    crop: row.crop,
    variety: row.variety,
    species: facts.species,
    harvest: harvestInWords(harvestOf(row)),
    lotNumber: row.lotNumber,
    scanCode: scanCode(row.lotNumber),
    source: facts.creditAs ?? '',
    germination: germinationOnLabel(row, settingsOf(reading).locale),
    contents: contents === '' ? quantityOf(row, settingsOf(reading)).words : contents,
    cautions: cautionsOf(reading, [row.lotId]).map(({ text }) => text),
    libraryName,
    known:
      withholding === null
        ? [...toldOf(reading, row, facts), ...keptOf(reading, row, facts)]
        : toldOf(reading, row, facts, withholding),
  }
}

/** What anybody may read of a lot: its other names, its story, and what the donor asked for. */
function toldOf(
  reading: Reading,
  row: LotRow,
  { story, terms }: LotFacts,
  withholding: Withholding | null = null,
): string[] {
  const names = synonymsOf(reading, row.varietyId)
  const shown = (text: string) => withholding?.text(text) ?? text
  return [
    names.length === 0 ? '' : `Also called ${names.join(', ')}`,
    terms === '' ? '' : `The donor asked: ${shown(terms)}`,
    shown(story),
  ].filter((fact) => fact !== '')
}

/** What is of use on the shelf and goes no further: where it was grown and lies, how moist, how often regrown. */
function keptOf(reading: Reading, row: LotRow, facts: LotFacts): string[] {
  const moisture = moistureOfLot(reading.sqlite, row.lotId)
  const day = dayOf(reading)
  return [
    facts.grownAt === '' ? '' : `Grown at ${facts.grownAt}`,
    row.generation === 0 ? '' : `Regrown here ${row.generation === 1 ? 'once' : `${row.generation} times`}`,
    `Came on ${day(facts.receivedOn)}`,
    moisture === null ? '' : `Moisture ${moisture.percent} %, ${day(moisture.measuredOn)}`,
    row.place === null ? '' : `Place: ${row.place}`,
  ].filter((fact) => fact !== '')
}

function germinationOnLabel(row: Pick<LotRow, 'tested' | 'sprouted' | 'testedOn'>, locale: string): string {
  if (row.tested === null || row.sprouted === null || row.testedOn === null) return ''
  const month = new Intl.DateTimeFormat(locale, { month: 'short', year: 'numeric', timeZone: 'UTC' })
  const share = Math.round((100 * row.sprouted) / row.tested)
  return `${share} % sprouted, ${month.format(Date.parse(`${row.testedOn}T00:00:00Z`))}`
}
