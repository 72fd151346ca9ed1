import type { ParsedInput, Value } from '../contract/contract.ts'
import { Refusal, refuse } from '../contract/refusal.ts'
import { milligrams } from '../domain/amounts/mass.ts'
import { seedCount } from '../domain/amounts/seed-count.ts'
import { withdrawal } from '../schema/stock-tables.ts'
import { countDoubt, quantity, quantityOf, weightInForce } from './amounts.ts'
import type { Reading, Writing } from './context.ts'
import { refuseTheFutureDay } from './intake.ts'
import { personFor } from './people.ts'
import { type PlannedLine, planWithdrawal } from './plan-withdrawal.ts'
import { writeMovement } from './write-movement.ts'

type Input = ParsedInput<'withdrawal.record'>

export function foreseeWithdrawal(
  reading: Reading,
  input: ParsedInput<'withdrawal.foresee'>,
): Value<'withdrawal.foresee'> {
  return {
    lines: planWithdrawal(reading, input.lines, input.purpose).map(
      ({ after, out, stock, cautions, problem }) => ({
        lotId: after.lot_id,
        lotNumber: after.lot_number,
        taken: out && quantity(takenBy(out.change), countDoubt(after), after),
        left: out && quantityOf(after),
        keep: stock.keep,
        state: out && stock.state,
        sentence: stock.sentence,
        cautions: cautions.map((caution) => ({
          despite: caution.despite,
          sentence: caution.problem.sentence,
        })),
        problem,
      }),
    ),
  }
}

function takenBy(change: { readonly count: number; readonly mass: number }) {
  return { count: seedCount(0 - change.count), mass: milligrams(0 - change.mass) }
}

export function recordWithdrawal(
  writing: Writing,
  input: Input,
): Omit<Value<'withdrawal.record'>, 'entryId'> {
  refuseTheFutureDay(input.on, writing.today, 'on')
  if (input.despite.length > 0 && input.reason === '') {
    refuse('value-refused', 'Say in a few words why this goes out all the same.', { field: 'reason' })
  }
  const planned = planWithdrawal(writing, input.lines, input.purpose)
  for (const line of planned) refuseUnlessAllowed(line, input.despite)
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
  for (const [index, { after, out }] of planned.entries()) {
    if (out === null) throw new Error('A planned line was let through without its decision')
    writeMovement(writing, {
      lotId: after.lot_id,
      kind: 'withdrawal',
      on: input.on,
      change: out.change,
      measured: out.measured,
      weight: weightInForce(after).weight,
      personId,
      withdrawalId,
      note: input.lines[index]?.note ?? '',
    })
  }
  const lines = leftInLots(planned)
  const first = lines[0]
  const said =
    lines.length === 1 && first
      ? `Handed out from ${first.lotNumber}; ${first.left.words} left`
      : `Handed out from ${lines.length} lots`
  return { withdrawalId, personId, lines, said, undoable: true }
}

function refuseUnlessAllowed(line: PlannedLine, despite: Input['despite']): void {
  if (line.problem !== null) throw new Refusal(line.problem)
  const unheeded = line.cautions.find((caution) => !despite.includes(caution.despite))
  if (unheeded) throw new Refusal(unheeded.problem)
}

/** One line for each lot: as it stands after the last of the visit's lines that touched it. */
function leftInLots(planned: readonly PlannedLine[]): Value<'withdrawal.record'>['lines'] {
  const last = new Map(planned.map((line) => [line.after.lot_id, line]))
  return [...last.values()].map(({ after, stock }) => ({
    lotId: after.lot_id,
    lotNumber: after.lot_number,
    left: quantityOf(after),
    state: stock.state,
    sentence: stock.sentence,
  }))
}
