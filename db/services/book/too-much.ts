import { refuse } from '../../contract/refusal.ts'
import { type Manner, massToType } from '../../domain/amounts/in-words.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import type { Outgoing } from '../../domain/ledger/movement.ts'
import type { LotRow } from '../../queries/lot-rows.ts'
import { quantity, quantityOf } from './amounts.ts'

/** Refuses an amount beyond the balance, with the balance and what can be done. */
export function refuseTooMuch(
  row: LotRow,
  out: Extract<Outgoing, { kind: 'not-enough' }>,
  field: string,
  manner: Manner,
): never {
  const unit = countedUnit(row.countedUnit)
  const asked = quantity(out.asked, 0, row, manner)
  const all =
    row.basis === 'weighed'
      ? massToType(out.balance.mass, manner)
      : `${out.balance.count} ${out.balance.count === 1 ? unit.one : unit.many}`
  const empty = out.balance.count === 0 && out.balance.mass === 0
  refuse(
    'not-enough-seed',
    `${row.lotNumber} holds ${empty ? 'nothing' : quantityOf(row, manner).words}, less than the ${asked.words} asked for.`,
    {
      field,
      todo: empty
        ? 'Choose another lot, or take stock of this one if there is seed in it.'
        : 'Take what is there, choose another lot, or take stock first if the book is wrong.',
      choices: empty ? [] : [all],
    },
  )
}
