import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { type WithdrawalSlip, withdrawalSlips } from '../../paper/withdrawal-slips.ts'
import { joinCanonicalPerson } from '../../queries/person-records.ts'
import { prepared } from '../../queries/prepared.ts'
import { slipLines, type TrayRow } from '../../queries/tray-rows.ts'
import type { Reading } from '../book/context.ts'
import { cautionsOf } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { checkWhatToPrint, itemsOrRefuse } from '../book/tray.ts'
import { dayOf, documentFacts, made } from './document.ts'
import { printLabels } from './labels.ts'
import { amountInWords, printLetters } from './letters.ts'

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
  const slips = rows.flatMap(({ withdrawalId }) =>
    withdrawalId === null ? [] : slipOf(reading, withdrawalId),
  )
  if (slips.length === 0) {
    refuse('nothing-to-print', 'What was handed out there was taken back since. There is no slip to print.', {
      field: 'itemIds',
    })
  }
  const printed = await withdrawalSlips({ slips, ...(await documentFacts(reading, 'Withdrawal slips')) })
  return made(printed, `slips-${reading.today}.pdf`)
}

interface Visit {
  readonly name: string | null
  readonly onDate: string
  readonly purpose: keyof typeof PURPOSES
  readonly promised: string
  readonly promisedBy: string | null
}

const PURPOSES = {
  'to-grow': 'to grow',
  'to-return': 'to grow and bring seed back',
  'grow-out': 'to grow out for the library',
  'safety-duplicate': 'safety duplicate, to be kept',
  other: '',
} as const

/** A visit's slip, or nothing where all of it was taken back. */
function slipOf(reading: Reading, withdrawalId: number): WithdrawalSlip[] {
  const visit = prepared(
    reading.sqlite,
    `SELECT member.name, on_date AS onDate, purpose, promised, promised_by AS promisedBy
     FROM withdrawal ${joinCanonicalPerson('member', 'withdrawal.person_id')} WHERE withdrawal.id = ?`,
  ).get(withdrawalId) as Visit
  const lines = slipLines(reading.sqlite, withdrawalId)
  if (lines.length === 0) return []
  const day = dayOf(reading)
  return [
    {
      to: visit.name ?? '',
      date: day(visit.onDate),
      purpose: PURPOSES[visit.purpose],
      lines: lines.map((line) => ({
        name: `${line.crop} ‘${line.variety}’`,
        lotNumber: line.number,
        amount: amountInWords(line, settingsOf(reading)),
        cautions: cautionsOf(reading, [line.lotId]).map(({ text }) => text),
      })),
      promise: promiseInWords(visit, day),
      libraryName: settingsOf(reading).libraryName,
    },
  ]
}

function promiseInWords(
  { promised, promisedBy }: Pick<Visit, 'promised' | 'promisedBy'>,
  day: (iso: string) => string,
): string {
  if (promised === '' && promisedBy === null) return ''
  const what = promised === '' ? 'some seed' : promised
  return `Promised back: ${what}${promisedBy === null ? '' : `, by ${day(promisedBy)}`}`
}
