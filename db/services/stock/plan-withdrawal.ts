import type { ParsedInput } from '../../contract/contract.ts'
import type { UntoldProblem } from '../../contract/problem.ts'
import { Refusal, refuse } from '../../contract/refusal.ts'
import type { Override } from '../../contract/withdrawal-operations.ts'
import type { Manner } from '../../domain/amounts/in-words.ts'
import { packetsIn } from '../../domain/amounts/packets.ts'
import { isKept, isOffered } from '../../domain/keeping/keeping.ts'
import { type Outgoing, takeOut } from '../../domain/ledger/movement.ts'
import { seedsForOneRegrowing } from '../../domain/needs/what-to-keep.ts'
import { limitsOnGiving } from '../../domain/terms/gift-limits.ts'
import { isOverVisitLimit } from '../../domain/withdrawal/visit-limit.ts'
import { type Message, message } from '../../messages/message.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { amountOrRefuse, balanceOf, weightInForce } from '../book/amounts.ts'
import type { Reading } from '../book/context.ts'
import { livingStockOf, policyOf } from '../book/living-stock.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { reasonOf } from '../book/quarantine-reason.ts'
import { cautionsTold } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { refuseTooMuch } from '../book/too-much.ts'

type Line = ParsedInput<'withdrawal.record'>['lines'][number]
type Purpose = ParsedInput<'withdrawal.record'>['purpose']

/** Something that goes out only when the keeper says why. */
export interface OutgoingCaution {
  readonly despite: Override
  readonly problem: UntoldProblem
}

/** What one line of a hand-out would do. */
export interface PlannedLine {
  /** The lot as it would be after this line and those before it. */
  readonly after: LotRow
  readonly out: Extract<Outgoing, { kind: 'allowed' }> | null
  readonly stock: ReturnType<typeof livingStockOf>
  readonly cautions: readonly OutgoingCaution[]
  readonly problem: UntoldProblem | null
  /** That its giver wished it to go to nobody: a sheet signed on paper has passed it by. */
  readonly notToGive: UntoldProblem | null
}

/** Works out what handing lines out would do, one after the other, without writing anything. Refuses unknown lots. */
export function planWithdrawal(reading: Reading, lines: readonly Line[], purpose: Purpose): PlannedLine[] {
  const policy = settingsOf(reading)
  const changed = new Map<number, LotRow>()
  return lines.map((line, index) => {
    const field = `lines.${index}`
    const row = changed.get(line.lotId) ?? lotOrRefuse(reading, line.lotId, `${field}.lotId`)
    const { out, problem } = decideLine(row, line, field, policy)
    const after = out === null ? row : { ...row, balanceCount: out.left.count, balanceMassMg: out.left.mass }
    changed.set(row.lotId, after)
    const lots = lotsOfAccessions(reading.sqlite, [row.accessionId]).map(
      (lot) => changed.get(lot.lotId) ?? lot,
    )
    const stock = livingStockOf(lots, policy)
    const one = seedsForOneRegrowing(policyOf(row, policy))
    const terms = termsOf(reading, row, purpose, field)
    const tooFew = out !== null && purpose !== 'grow-out' && isKept(row.policy) && stock.living < one
    return {
      after,
      out,
      stock,
      problem,
      notToGive: terms.notToGive,
      cautions: [
        ...roleCaution(row, field),
        ...terms.cautions,
        ...seedCautions(reading, row, field),
        ...(tooFew
          ? [tooFewLeft(message('withdrawal.too-few-left', { left: stock.sentence, needed: one }), field)]
          : []),
      ],
    }
  })
}

function decideLine(
  row: LotRow,
  line: Line,
  field: string,
  manner: Manner,
): Pick<PlannedLine, 'out' | 'problem'> {
  try {
    refuseUnfitLot(row, `${field}.lotId`)
    const amount = amountOrRefuse(manner, line.amount, row.packetSeeds, `${field}.amount`)
    const out = takeOut(balanceOf(row), amount, weightInForce(row).weight)
    if (out.kind === 'not-enough') refuseTooMuch(row, out, `${field}.amount`, manner)
    return { out, problem: null }
  } catch (cause) {
    if (cause instanceof Refusal) return { out: null, problem: cause.problem }
    throw cause
  }
}

function refuseUnfitLot(row: LotRow, field: string): void {
  if (row.quarantineReason !== null) {
    const { lotNumber: lot } = row
    const reason = reasonOf(row.quarantineReason)
    refuse('in-quarantine', message('withdrawal.in-quarantine', { lot, reason }), {
      field,
      todo: message('withdrawal.in-quarantine-todo'),
    })
  }
  if (row.role === 'duplicate-elsewhere') {
    refuse('wrong-role', message('withdrawal.duplicate-elsewhere', { lot: row.lotNumber }), {
      field,
    })
  }
}

/** What of how a lot is kept wants a reason: its accession is closed, or it is kept back for something else. */
function roleCaution(row: LotRow, field: string): OutgoingCaution[] {
  const caution = (
    despite: Override,
    sentence: Message,
    todo: Message = message('withdrawal.choose-working-lot'),
  ): OutgoingCaution => ({
    despite,
    problem: {
      code: 'caution',
      sentence,
      field: `${field}.lotId`,
      todo,
      choices: [despite],
    },
  })
  const closed = isOffered(row.policy)
    ? []
    : [
        caution(
          'closed',
          message('keeping.closed-lot', { lot: row.lotNumber }),
          message('keeping.closed-lot-todo'),
        ),
      ]
  if (row.role === 'reference') {
    return [
      ...closed,
      caution('reference-sample', message('withdrawal.reference-sample', { lot: row.lotNumber })),
    ]
  }
  return row.role === 'reserve'
    ? [...closed, caution('reserve', message('withdrawal.reserve', { lot: row.lotNumber }))]
    : closed
}

/** What the seed itself or its plant has to be careful about: it holds after the lot was released from quarantine. */
function seedCautions(reading: Reading, row: LotRow, field: string): OutgoingCaution[] {
  return cautionsTold(reading, [row.lotId]).map(({ caution, text }) => ({
    despite: caution,
    problem: {
      code: 'caution',
      sentence: text,
      field: `${field}.lotId`,
      todo: message('withdrawal.seed-caution-todo'),
      choices: [caution],
    },
  }))
}

/** What the terms of the gift ask for, or forbid. */
function termsOf(
  reading: Reading,
  { accessionId, lotNumber: lot }: LotRow,
  purpose: Purpose,
  field: string,
): Pick<PlannedLine, 'notToGive' | 'cautions'> {
  const limits = limitsOfAccession(reading.sqlite, accessionId)
  const { isRefused, cautions } = limitsOnGiving(limits, purpose, reading.today)
  const problem = { field: `${field}.lotId`, choices: [] }
  return {
    notToGive: isRefused
      ? {
          ...problem,
          code: 'not-to-give',
          sentence: message('terms.refused', { lot }),
          todo: message('terms.refused-todo'),
        }
      : null,
    cautions: cautions.map((limit) => ({
      despite: limit,
      problem: {
        ...problem,
        code: 'caution',
        sentence: message(`terms.caution.${limit}`, { lot }),
        todo: message(`terms.todo.${limit}`),
        choices: [limit],
      },
    })),
  }
}

function tooFewLeft(sentence: Message, field: string): OutgoingCaution {
  return {
    despite: 'too-few-left',
    problem: {
      code: 'caution',
      sentence,
      field: `${field}.amount`,
      todo: message('withdrawal.too-few-left-todo'),
      choices: ['too-few-left'],
    },
  }
}

/** What wants a reason about a visit as a whole: more packets than the keeper's limit for one. */
export function visitCautions(
  reading: Reading,
  visit: { readonly lines: readonly Line[]; readonly purpose: Purpose },
): OutgoingCaution[] {
  const { visitLimit } = settingsOf(reading)
  const packets = packetsIn(visit.lines.map(({ amount }) => amount))
  if (!isOverVisitLimit(packets, visitLimit, visit.purpose)) return []
  return [
    {
      despite: 'over-limit',
      problem: {
        code: 'caution',
        sentence: message('withdrawal.over-limit', { packets, limit: visitLimit ?? 0 }),
        field: 'lines',
        todo: message('withdrawal.over-limit-todo'),
        choices: ['over-limit'],
      },
    },
  ]
}
