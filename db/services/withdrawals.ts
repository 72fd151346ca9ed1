import type { ParsedInput, Value } from '../contract/contract.ts'
import { refuse } from '../contract/refusal.ts'
import { massToType } from '../domain/amounts/in-words.ts'
import { countedUnit } from '../domain/crops/counted-unit.ts'
import { type Outgoing, takeOut } from '../domain/ledger/movement.ts'
import { seedsForOneRegrowing } from '../domain/needs/what-to-keep.ts'
import { type LotRow, lotsOfAccessions } from '../queries/lot-rows.ts'
import { withdrawal } from '../schema/stock-tables.ts'
import { amountOrRefuse, balanceOf, quantity, quantityOf, weightInForce } from './amounts.ts'
import type { Writing } from './context.ts'
import { refuseTheFutureDay } from './intake.ts'
import { livingStockOf, policyOf } from './living-stock.ts'
import { lotOrRefuse } from './new-lot.ts'
import { personFor } from './people.ts'
import { settingsOf } from './settings.ts'
import { writeMovement } from './write-movement.ts'

type Input = ParsedInput<'withdrawal.record'>
type Override = Input['despite'][number]

export function recordWithdrawal(
  writing: Writing,
  input: Input,
): Omit<Value<'withdrawal.record'>, 'entryId'> {
  refuseTheFutureDay(input.on, writing.today, 'on')
  if (input.despite.length > 0 && input.reason === '') {
    refuse('value-refused', 'Say in a few words why this goes out all the same.', { field: 'reason' })
  }
  const personId = input.person === null ? null : personFor(writing, input.person, 'member', 'person')
  const { id: withdrawalId } = writing.db
    .insert(withdrawal)
    .values({
      personId,
      onDate: input.on,
      purpose: input.purpose,
      promised: input.promised,
      promisedBy: input.promisedBy,
      note: input.note,
      overridden: input.despite.length === 0 ? '' : `${input.despite.join(', ')}: ${input.reason}`,
      entryId: writing.entryId,
    })
    .returning({ id: withdrawal.id })
    .get()
  for (const [index, line] of input.lines.entries()) {
    handOutLine(writing, input, line, { personId, withdrawalId, field: `lines.${index}` })
  }
  const lines = leftInLots(writing, input.lines)
  const first = lines[0]
  const said =
    lines.length === 1 && first
      ? `Handed out from ${first.lotNumber}; ${first.left.words} left`
      : `Handed out from ${lines.length} lots`
  return { withdrawalId, personId, lines, said, undoable: true }
}

function handOutLine(
  writing: Writing,
  input: Input,
  line: Input['lines'][number],
  to: { personId: number | null; withdrawalId: number; field: string },
): void {
  const row = lotOrRefuse(writing, line.lotId, `${to.field}.lotId`)
  refuseUnfitLot(row, input.despite, to.field)
  const amount = amountOrRefuse(line.amount, row.packet_seeds, `${to.field}.amount`)
  const { weight } = weightInForce(row)
  const out = takeOut(balanceOf(row), amount, weight)
  if (out.kind === 'not-enough') refuseTooMuch(row, out, `${to.field}.amount`)
  writeMovement(writing, {
    lotId: row.lot_id,
    kind: 'withdrawal',
    on: input.on,
    change: out.change,
    measured: out.measured,
    weight,
    personId: to.personId,
    withdrawalId: to.withdrawalId,
    note: line.note,
  })
  refuseTooFewLeft(writing, row, input, to.field)
}

function refuseUnfitLot(row: LotRow, despite: readonly Override[], field: string): void {
  const at = { field: `${field}.lotId` }
  if (row.quarantine_reason !== null) {
    refuse('in-quarantine', `${row.lot_number} is in quarantine: ${row.quarantine_reason}`, {
      ...at,
      todo: 'Check the seed, then release the lot in its record.',
    })
  }
  if (row.role === 'duplicate-elsewhere') {
    refuse(
      'wrong-role',
      `${row.lot_number} is a safety duplicate that is kept elsewhere: it is not in the drawer.`,
      at,
    )
  }
  if (row.role === 'reference' && !despite.includes('reference-sample')) {
    refuse(
      'caution',
      `${row.lot_number} is the reference sample, the most original seed there is. It is not sown or given away without a reason.`,
      {
        ...at,
        todo: 'Choose a working lot, or say why.',
        choices: ['reference-sample'],
      },
    )
  }
  if (row.role === 'reserve' && !despite.includes('reserve')) {
    refuse('caution', `${row.lot_number} is the reserve kept for regrowing.`, {
      ...at,
      todo: 'Choose a working lot, or say why.',
      choices: ['reserve'],
    })
  }
}

/** Refuses an amount beyond the balance, with the balance and what can be done. */
export function refuseTooMuch(
  row: LotRow,
  out: Extract<Outgoing, { kind: 'not-enough' }>,
  field: string,
): never {
  const unit = countedUnit(row.crop_id)
  const asked = quantity(out.asked, 0, row)
  const all =
    row.basis === 'weighed'
      ? massToType(out.balance.mass)
      : `${out.balance.count} ${out.balance.count === 1 ? unit.one : unit.many}`
  const empty = out.balance.count === 0 && out.balance.mass === 0
  refuse(
    'not-enough-seed',
    `${row.lot_number} holds ${empty ? 'nothing' : quantityOf(row).words}, less than the ${asked.words} asked for.`,
    {
      field,
      todo: empty
        ? 'Choose another lot, or take stock of this one if there is seed in it.'
        : 'Take what is there, choose another lot, or take stock first if the book is wrong.',
      choices: empty ? [] : [all],
    },
  )
}

function refuseTooFewLeft(writing: Writing, before: LotRow, input: Input, field: string): void {
  if (input.despite.includes('too-few-left') || input.purpose === 'grow-out') return
  const policy = settingsOf(writing)
  const lots = lotsOfAccessions(writing.sqlite, [before.accession_id])
  const after = livingStockOf(lots, policy)
  const one = seedsForOneRegrowing(policyOf(before, policy))
  if (after.living >= one) return
  refuse('caution', `That would leave ${after.sentence}; one regrowing needs ${one}.`, {
    field: `${field}.amount`,
    todo: 'Give less, or say why this goes out all the same.',
    choices: ['too-few-left'],
  })
}

function leftInLots(writing: Writing, lines: Input['lines']): Value<'withdrawal.record'>['lines'] {
  const policy = settingsOf(writing)
  return [...new Set(lines.map(({ lotId }) => lotId))].map((lotId) => {
    const row = lotOrRefuse(writing, lotId, 'lotId')
    const stock = livingStockOf(lotsOfAccessions(writing.sqlite, [row.accession_id]), policy)
    return {
      lotId,
      lotNumber: row.lot_number,
      left: quantityOf(row),
      state: stock.state,
      sentence: stock.sentence,
    }
  })
}
