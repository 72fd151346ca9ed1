import type { ParsedInput, Result } from '../../contract/contract.ts'
import type { WithdrawalPurpose } from '../../contract/fields.ts'
import { refuse } from '../../contract/refusal.ts'
import { isPiece } from '../../domain/crops/pieces.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { type WithdrawalSlip, withdrawalSlips } from '../../paper/withdrawal-slips.ts'
import { joinCanonicalPerson } from '../../queries/person-records.ts'
import { prepared } from '../../queries/prepared.ts'
import { slipLines, type TrayRow } from '../../queries/tray-rows.ts'
import type { Reading } from '../book/context.ts'
import { mustBeRead } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { checkWhatToPrint, itemsOrRefuse } from '../book/tray.ts'
import { documentFacts, made, textsFor } from './document.ts'
import { printLabels } from './labels.ts'
import { printLetters } from './letters.ts'
import { amountOnPaper, seedOnPaper } from './seed-facts.ts'

/** The PDF of some items of one kind. Marks nothing. */
export async function previewTray(
  reading: Reading,
  input: ParsedInput<'tray.render'>,
): Promise<Result<'tray.render'>> {
  const rows = itemsOrRefuse(reading, input.itemIds, 'itemIds')
  checkWhatToPrint(reading, rows, input)
  switch (input.kind) {
    case 'label':
      return labelsOf(reading, rows, input)
    case 'letter':
      return printLetters(reading, rows)
    case 'slip':
      return slipsOf(reading, rows)
  }
}

function labelsOf(
  reading: Reading,
  rows: readonly TrayRow[],
  { sheet, startAt, offsetMm, says, cropMarks }: ParsedInput<'tray.render'>,
): Promise<Result<'tray.render'>> {
  const labels = rows.flatMap(({ lotId, copies, contents }) =>
    lotId === null ? [] : [{ lotId, copies, contents }],
  )
  if (sheet === undefined) throw new Error('Labels were let through without their sheet')
  return printLabels(reading, { labels, sheet, startAt, offsetMm, says, cropMarks })
}

async function slipsOf(reading: Reading, rows: readonly TrayRow[]): Promise<Result<'tray.render'>> {
  const found = rows.map(({ withdrawalId }) => (withdrawalId === null ? [] : slipOf(reading, withdrawalId)))
  const slips = (await Promise.all(found)).flat()
  if (slips.length === 0) {
    refuse('nothing-to-print', message('print.no-slip'), { field: 'itemIds' })
  }
  const tellers = slips.map(({ texts }) => texts)
  const facts = await documentFacts(reading, message('paper.title-slips'), tellers)
  const printed = await withdrawalSlips({ slips, ...facts })
  return made(printed, `slips-${reading.today}.pdf`)
}

interface Visit {
  readonly personId: number | null
  readonly name: string | null
  readonly onDate: string
  readonly purpose: WithdrawalPurpose
  readonly promised: string
  readonly promisedBy: string | null
}

/** A visit's slip in the language of who took seed, or nothing where all of it was taken back. */
async function slipOf(reading: Reading, withdrawalId: number): Promise<WithdrawalSlip[]> {
  const visit = prepared(
    reading.sqlite,
    `SELECT member.id AS personId, member.name, on_date AS onDate, purpose, promised, promised_by AS promisedBy
     FROM withdrawal ${joinCanonicalPerson('member', 'withdrawal.person_id')} WHERE withdrawal.id = ?`,
  ).get(withdrawalId) as Visit
  const lines = slipLines(reading.sqlite, withdrawalId)
  if (lines.length === 0) return []
  const texts = await textsFor(reading, visit.personId)
  const { purpose } = visit
  return [
    {
      to: visit.name ?? '',
      date: texts.value({ day: visit.onDate }),
      purpose: purpose === 'other' ? '' : texts.text(`paper.slip-purpose.${purpose}`),
      lines: lines.map((line) => ({
        name: seedOnPaper(line, texts),
        lotNumber: line.number,
        amount: amountOnPaper(line, texts),
        pieces: isPiece(line.countedUnit),
        cautions: mustBeRead(reading, [line.lotId]).map(texts.say),
      })),
      promise: promiseOf(settingsOf(reading).dueDates ? visit : { ...visit, promisedBy: null }, texts),
      libraryName: settingsOf(reading).libraryName,
      texts,
    },
  ]
}

function promiseOf(
  { promised, promisedBy }: Pick<Visit, 'promised' | 'promisedBy'>,
  { text }: Texts,
): string {
  if (promised === '' && promisedBy === null) return ''
  const what = promised === '' ? text('paper.slip-some-seed') : promised
  return promisedBy === null
    ? text('paper.slip-promised', { what })
    : text('paper.slip-promised-by', { what, by: { day: promisedBy } })
}
