import type { ParsedInput, Result } from '../../contract/contract.ts'
import { Refusal, refuse } from '../../contract/refusal.ts'
import { milligrams } from '../../domain/amounts/mass.ts'
import { packetsIn } from '../../domain/amounts/packets.ts'
import { seedCount } from '../../domain/amounts/seed-count.ts'
import { ON_PAPER } from '../../domain/ledger/overridden.ts'
import { message } from '../../messages/message.ts'
import type { GrowOutRow } from '../../queries/grow-out-rows.ts'
import { withdrawal } from '../../schema/stock-tables.ts'
import { amountOf, countDoubt, heldIn, weightInForce } from '../book/amounts.ts'
import type { Reads, Writes, Writing } from '../book/context.ts'
import { personFor } from '../book/people.ts'
import { toTray } from '../book/tray.ts'
import { writeMovement } from '../book/write-movement.ts'
import { growOutOrRefuse } from '../regrow/grow-outs.ts'
import { writeRequest } from './institutions.ts'
import { type OutgoingCaution, type PlannedLine, planWithdrawal, visitCautions } from './plan-withdrawal.ts'
import { hasDueDates } from './promises.ts'

type Input = ParsedInput<'withdrawal.record'>

export const previewWithdrawal: Reads<'withdrawal.preview'> = (reading, input) => {
  const shown = (caution: OutgoingCaution) => ({
    despite: caution.despite,
    sentence: caution.problem.sentence,
  })
  return {
    cautions: visitCautions(reading, input).map(shown),
    lines: planWithdrawal(reading, input.lines, input.purpose).map(
      ({ after, out, stock, cautions, problem, notToGive }) => ({
        lotId: after.lotId,
        lotNumber: after.lotNumber,
        taken: out && amountOf(takenBy(out.change), out.measured === 'count' ? 0 : countDoubt(after), after),
        left: out && heldIn(after),
        stock,
        cautions: cautions.map(shown),
        problem: problem ?? notToGive,
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
): Omit<Result<'withdrawal.record'>, 'entryId'> {
  if (input.despite.length > 0 && input.reason === '') {
    refuse('words-missing', message('withdrawal.say-why'), { field: 'reason' })
  }
  if (input.promisedBy !== null && !hasDueDates(writing)) {
    refuse('due-dates-off', message('withdrawal.due-dates-off'), {
      field: 'promisedBy',
      todo: message('withdrawal.due-dates-off-todo'),
    })
  }
  const unheeded = visitCautions(writing, input).find((caution) => !input.despite.includes(caution.despite))
  if (unheeded) throw new Refusal(unheeded.problem)
  const planned = planWithdrawal(writing, input.lines, input.purpose)
  for (const line of planned) refuseUnlessAllowed(line, input.despite)
  const { growOutId } = input
  if (growOutId !== null) refuseOtherSeed(planned, growOutOrRefuse(writing, growOutId))
  if (input.institution !== null && input.person === null) {
    refuse('words-missing', message('elsewhere.which-institution'), { field: 'person' })
  }
  const personId = input.person === null ? null : personFor(writing, input.person, 'member', 'person')
  const { on, purpose, promised, promisedBy, note } = input
  const overridden = input.despite.length === 0 ? '' : `${input.despite.join(', ')}: ${input.reason}`
  const withdrawalId = addVisit(writing, {
    personId,
    onDate: on,
    purpose,
    promised,
    promisedBy,
    note,
    overridden,
    growOutId,
  })
  for (const [index, line] of planned.entries()) {
    writeLine(writing, line, { on, personId, withdrawalId, note: input.lines[index]?.note ?? '' })
  }
  if (input.institution !== null) writeRequest(writing, withdrawalId, input.institution, 'institution.')
  if (input.slip) toTray(writing, { kind: 'slip', withdrawalId })
  const lines = leftInLots(planned)
  const first = lines[0]
  const said =
    lines.length === 1 && first
      ? message('withdrawal.handed-out', { lot: first.lotNumber, left: first.left.words })
      : message('withdrawal.handed-out-lots', { lots: lines.length })
  return { withdrawalId, personId, lines, said, undoable: true }
}

/** A sheet that was signed on paper has happened: cautions are noted as passed by, only seed that is not there is refused. */
export const recordPaperSheet: Writes<'paper-sheet.record'> = (writing, input) => {
  const planned = planWithdrawal(writing, input.lines, 'to-grow')
  for (const { problem } of planned) if (problem !== null) throw new Refusal(problem)
  const visits = new Map<string, { withdrawalId: number; personId: number | null }>()
  for (const [index, line] of planned.entries()) {
    const typed = input.lines[index]
    if (typed === undefined) throw new Error('A planned line without its typed one')
    const visit = visits.get(whoseVisit(typed.person)) ?? addSheetVisit(writing, input, typed.person, index)
    visits.set(whoseVisit(typed.person), visit)
    writeLine(writing, line, { on: input.on, ...visit, note: typed.note })
  }
  return {
    visits: [...visits.values()],
    lines: leftInLots(planned),
    said: message('withdrawal.paper-sheet', {
      on: { day: input.on },
      packets: packetsIn(input.lines.map(({ amount }) => amount)),
    }),
    undoable: true,
  }
}

/** Lines of one person are one visit; a new person is the same one as long as everything typed of them is the same. */
function whoseVisit(person: ParsedInput<'paper-sheet.record'>['lines'][number]['person']): string {
  return JSON.stringify(person)
}

function addSheetVisit(
  writing: Writing,
  input: ParsedInput<'paper-sheet.record'>,
  person: ParsedInput<'paper-sheet.record'>['lines'][number]['person'],
  index: number,
) {
  const personId = person === null ? null : personFor(writing, person, 'member', `lines.${index}.person`)
  const withdrawalId = addVisit(writing, {
    personId,
    onDate: input.on,
    purpose: 'to-grow',
    promised: '',
    promisedBy: null,
    note: input.note,
    overridden: ON_PAPER,
    growOutId: null,
  })
  return { withdrawalId, personId }
}

function refuseOtherSeed(planned: readonly PlannedLine[], growOut: GrowOutRow): void {
  const other = planned.find(({ after }) => after.accessionId !== growOut.accessionId)
  if (other !== undefined) {
    refuse(
      'other-accession',
      message('withdrawal.other-seed', {
        lot: other.after.lotNumber,
        accession: growOut.accessionNumber,
      }),
      {
        field: 'growOutId',
      },
    )
  }
}

function addVisit(writing: Writing, facts: Omit<typeof withdrawal.$inferInsert, 'id' | 'entryId'>): number {
  return writing.db
    .insert(withdrawal)
    .values({ ...facts, entryId: writing.entryId })
    .returning({ id: withdrawal.id })
    .get().id
}

function writeLine(
  writing: Writing,
  { after, out }: PlannedLine,
  visit: { on: string; personId: number | null; withdrawalId: number; note: string },
): void {
  if (out === null) throw new Error('A planned line was let through without its decision')
  writeMovement(writing, {
    lotId: after.lotId,
    kind: 'withdrawal',
    change: out.change,
    measured: out.measured,
    weight: weightInForce(after).weight,
    ...visit,
  })
}

function refuseUnlessAllowed(line: PlannedLine, despite: Input['despite']): void {
  const problem = line.problem ?? line.notToGive
  if (problem !== null) throw new Refusal(problem)
  const unheeded = line.cautions.find((caution) => !despite.includes(caution.despite))
  if (unheeded) throw new Refusal(unheeded.problem)
}

/** One line for each lot: as it stands after the last of the visit's lines that touched it. */
function leftInLots(planned: readonly PlannedLine[]): Result<'withdrawal.record'>['lines'] {
  const last = new Map(planned.map((line) => [line.after.lotId, line]))
  return [...last.values()].map(({ after, stock }) => ({
    lotId: after.lotId,
    lotNumber: after.lotNumber,
    left: heldIn(after),
    state: stock.state,
    sentence: stock.sentence,
  }))
}
