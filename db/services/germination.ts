import { eq } from 'drizzle-orm'
import type { ParsedInput, Value } from '../contract/contract.ts'
import { refuse } from '../contract/refusal.ts'
import { seedCount } from '../domain/amounts/seed-count.ts'
import { wilsonInterval } from '../domain/germination/wilson.ts'
import { takeOut } from '../domain/ledger/movement.ts'
import { lotsOfAccessions } from '../queries/lot-rows.ts'
import { latestMeasurement } from '../queries/measurements.ts'
import { germinationResult, lot } from '../schema/stock-tables.ts'
import { balanceOf, weightInForce } from './amounts.ts'
import type { Writing } from './context.ts'
import { refuseTheFutureDay } from './intake.ts'
import { livingStockOf } from './living-stock.ts'
import { lotOrRefuse } from './new-lot.ts'
import { refuseTooMuch } from './plan-withdrawal.ts'
import { settingsOf } from './settings.ts'
import { writeMovement } from './write-movement.ts'

/** A germination result in words: '17 of 20 sprouted: 85 %, between 64 % and 95 %'. */
export function resultInWords(sprouted: number, tested: number): string {
  const [low, high] = wilsonInterval(sprouted, tested)
  const percent = (part: number) => `${Math.round(100 * part)} %`
  return `${sprouted} of ${tested} sprouted: ${percent(sprouted / tested)}, between ${percent(low)} and ${percent(high)}`
}

export function recordGermination(
  writing: Writing,
  input: ParsedInput<'germination.record'>,
): Omit<Value<'germination.record'>, 'entryId'> {
  refuseTheFutureDay(input.on, writing.today, 'on')
  if (input.sprouted > input.tested) {
    refuse('value-refused', `${input.sprouted} cannot sprout of ${input.tested}. Check both numbers.`, {
      field: 'sprouted',
    })
  }
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  if (input.fromStock) {
    const { weight } = weightInForce(row)
    const tested = { kind: 'count', count: seedCount(input.tested), estimated: false } as const
    const out = takeOut(balanceOf(row), tested, weight)
    if (out.kind === 'not-enough') refuseTooMuch(row, out, 'tested')
    writeMovement(writing, {
      lotId: row.lot_id,
      kind: 'test',
      on: input.on,
      change: out.change,
      measured: out.measured,
      weight,
      note: input.note,
    })
  }
  writing.db
    .insert(germinationResult)
    .values({
      lotId: row.lot_id,
      testedOn: input.on,
      tested: input.tested,
      sprouted: input.sprouted,
      note: input.note,
      entryId: writing.entryId,
    })
    .run()
  putLatestResultInForce(writing, row.lot_id)
  const words = resultInWords(input.sprouted, input.tested)
  const stock = livingStockOf(lotsOfAccessions(writing.sqlite, [row.accession_id]), settingsOf(writing))
  return { words, stock, said: `${row.lot_number}: ${words}`, undoable: true }
}

/** Points a lot at its latest result by date that was not taken back. */
export function putLatestResultInForce(writing: Writing, lotId: number): void {
  const germinationId = latestMeasurement(writing.sqlite, 'germination_result', lotId)
  writing.db.update(lot).set({ germinationId }).where(eq(lot.id, lotId)).run()
}
