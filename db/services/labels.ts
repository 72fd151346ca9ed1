import type { ParsedInput, Value } from '../contract/contract.ts'
import { LabelSheet } from '../contract/paper-operations.ts'
import { refuse } from '../contract/refusal.ts'
import { harvestInWords } from '../domain/dates/harvest-year.ts'
import { scanCode } from '../domain/numbers/scan-code.ts'
import { loadPaperFonts } from '../paper/fonts.ts'
import { labelsOnSheet, SHEETS } from '../paper/label-sheets.ts'
import { packetLabels } from '../paper/packet-labels.ts'
import type { PacketLabel } from '../paper/packet-text.ts'
import { lotFacts } from '../queries/lot-facts.ts'
import { quantityOf } from './amounts.ts'
import type { Reading } from './context.ts'
import { cautionsOf } from './lot-record.ts'
import { harvestOf, lotOrRefuse } from './new-lot.ts'
import { settingsOf } from './settings.ts'

export function listSheets(): Value<'label.sheets'> {
  return {
    sheets: LabelSheet.options.map((sheet) => {
      const { name, columns, rows, widthMm, heightMm } = SHEETS[sheet]
      return { sheet, name, columns, rows, widthMm, heightMm }
    }),
  }
}

export async function printLabels(
  reading: Reading,
  input: ParsedInput<'label.print'>,
): Promise<Value<'label.print'>> {
  const perSheet = labelsOnSheet(SHEETS[input.sheet])
  if (input.startAt > perSheet) {
    refuse('value-refused', `That sheet has ${perSheet} labels. Start at one of them.`, { field: 'startAt' })
  }
  const { libraryName, locale } = settingsOf(reading)
  const labels = input.labels.flatMap(({ lotId, copies, contents }, index) => {
    const label = labelOf(reading, lotId, contents, libraryName, `labels.${index}.lotId`)
    return Array.from({ length: copies }, () => label)
  })
  const { bytes, pages, warnings } = await packetLabels({
    labels,
    sheet: input.sheet,
    startAt: input.startAt,
    offsetMm: input.offsetMm,
    title: `Packet labels, ${libraryName}`,
    language: locale,
    fonts: await loadPaperFonts(),
  })
  const fileName = `labels-${reading.today}.pdf`
  return { pdf: Buffer.from(bytes).toString('base64'), fileName, pages, warnings: [...warnings] }
}

function labelOf(
  reading: Reading,
  lotId: number,
  contents: string,
  libraryName: string,
  field: string,
): PacketLabel {
  const row = lotOrRefuse(reading, lotId, field)
  const facts = lotFacts(reading.sqlite, lotId)
  return {
    crop: row.crop,
    variety: row.variety,
    species: facts.species,
    harvest: harvestInWords(harvestOf(row)),
    lotNumber: row.lot_number,
    scanCode: scanCode(row.lot_number),
    source: facts.credit_as ?? '',
    germination: germinationOnLabel(row),
    contents: contents === '' ? quantityOf(row).words : contents,
    cautions: cautionsOf(reading, row.accession_id).map(({ text }) => text),
    libraryName,
  }
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

function germinationOnLabel(row: {
  tested: number | null
  sprouted: number | null
  tested_on: string | null
}): string {
  if (row.tested === null || row.sprouted === null || row.tested_on === null) return ''
  const month = MONTHS[Number(row.tested_on.slice(5, 7)) - 1] ?? ''
  return `${Math.round((100 * row.sprouted) / row.tested)} % sprouted, ${month} ${row.tested_on.slice(0, 4)}`
}
