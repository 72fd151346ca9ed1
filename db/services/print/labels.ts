import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { isPiece } from '../../domain/crops/pieces.ts'
import { scanCode } from '../../domain/numbers/scan-code.ts'
import { communityLabelTold, type GiftLimits } from '../../domain/terms/gift-limits.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { isEnvelope, labelsOnSheet } from '../../paper/packets/label-sheets.ts'
import { packetLabels } from '../../paper/packets/packet-labels.ts'
import type { PacketLabel } from '../../paper/packets/packet-text.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import { moistureOfLot } from '../../queries/lot-climate.ts'
import { type LotFacts, lotFacts } from '../../queries/lot-facts.ts'
import type { LotRow } from '../../queries/lot-rows.ts'
import { amountTold, balanceOf, countDoubt } from '../book/amounts.ts'
import type { Reading } from '../book/context.ts'
import { sheetOrRefuse } from '../book/label-sheets.ts'
import { harvestOf, lotOrRefuse } from '../book/new-lot.ts'
import { mustBeRead, synonymsOf } from '../book/seed-words.ts'
import { type Withholding, withholdingForAll } from '../people/withhold.ts'
import { documentFacts, made } from './document.ts'
import { cropOnPaper, harvestOnPaper } from './seed-facts.ts'

/** Labels of lots on a sheet, from any label of it on. Refuses an unknown sheet or lot, and a start off the sheet. */
export async function printLabels(
  reading: Reading,
  input: ParsedInput<'label.print'>,
): Promise<Result<'label.print'>> {
  const sheet = sheetOrRefuse(reading, input.sheet, 'sheet')
  const perSheet = labelsOnSheet(sheet)
  if (input.startAt > perSheet) {
    refuse('off-the-sheet', message('print.off-the-sheet', { labels: perSheet }), { field: 'startAt' })
  }
  const facts = await documentFacts(reading, message('paper.title-labels'))
  const goesOut = sheet.folded === true || isEnvelope(sheet)
  const withholding = goesOut ? withholdingForAll(reading, facts.texts.say) : null
  const labels = input.labels.flatMap(({ lotId, copies, contents }, index) => {
    const label = labelOf(reading, { lotId, contents }, facts, `labels.${index}.lotId`, withholding)
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
  { lotId, contents }: { readonly lotId: number; readonly contents: string },
  { libraryName, texts }: { readonly libraryName: string; readonly texts: Texts },
  field: string,
  /** What a packet that goes out does not say; null for one that stays on the shelf. */
  withholding: Withholding | null,
): PacketLabel {
  const row = lotOrRefuse(reading, lotId, field)
  const facts = lotFacts(reading.sqlite, lotId)
  const limits = limitsOfAccession(reading.sqlite, row.accessionId)
  return {
    crop: cropOnPaper(row.crop, texts),
    variety: row.variety,
    species: facts.species,
    harvest: harvestOnPaper(harvestOf(row), texts),
    lotNumber: row.lotNumber,
    scanCode: scanCode(row.lotNumber),
    source: limits.publishName ? (facts.creditAs ?? '') : '',
    germination: germinationOnLabel(row, texts),
    contents: contents === '' ? texts.say(amountTold(balanceOf(row), countDoubt(row), row)) : contents,
    cautions: mustBeRead(reading, [row.lotId], 'little').map(texts.say),
    libraryName,
    pieces: isPiece(row.countedUnit),
    known:
      withholding === null
        ? [...toldOf(reading, row, { ...facts, limits }, texts), ...keptOf(reading, row, facts, texts)]
        : toldOf(reading, row, { ...facts, limits }, texts, withholding),
  }
}

/** What anybody may read of a lot: that it does not come true, its other names, what was asked for, its story, a community's label. */
function toldOf(
  reading: Reading,
  row: LotRow,
  { story, terms, limits }: LotFacts & { readonly limits: GiftLimits },
  { text: told, say }: Texts,
  withholding: Withholding | null = null,
): string[] {
  const names = synonymsOf(reading, row.varietyId)
  const shown = (text: string) => withholding?.text(text) ?? text
  return [
    row.breeding === 'first-generation-hybrid' ? told('keeping.not-true') : '',
    names.length === 0 ? '' : told('paper.packet-also', { names: names.join(', ') }),
    terms === '' ? '' : told('paper.packet-asked', { terms: shown(terms) }),
    limits.publishStory ? shown(story) : '',
    ...communityLabelTold(limits).map(say),
  ].filter((fact) => fact !== '')
}

/** What is of use on the shelf and goes no further: where it was grown and lies, how moist, how often regrown. */
function keptOf(reading: Reading, row: LotRow, facts: LotFacts, { text: told }: Texts): string[] {
  const moisture = moistureOfLot(reading.sqlite, row.lotId)
  return [
    facts.grownAt === '' ? '' : told('paper.packet-grown-at', { place: facts.grownAt }),
    row.generation === 0 ? '' : told('paper.packet-regrown', { times: row.generation }),
    told('paper.packet-came', { day: { day: facts.receivedOn } }),
    moisture === null
      ? ''
      : told('paper.packet-moisture', {
          percent: moisture.percent,
          day: { day: moisture.measuredOn },
        }),
    row.place === null ? '' : told('paper.packet-place', { place: row.place }),
  ].filter((fact) => fact !== '')
}

function germinationOnLabel(row: Pick<LotRow, 'tested' | 'sprouted' | 'testedOn'>, texts: Texts): string {
  if (row.tested === null || row.sprouted === null || row.testedOn === null) return ''
  const month = new Intl.DateTimeFormat(texts.locale, { month: 'short', year: 'numeric', timeZone: 'UTC' })
  return texts.text('paper.packet-sprouted', {
    share: { part: row.sprouted / row.tested },
    month: month.format(Date.parse(`${row.testedOn}T00:00:00Z`)),
  })
}
