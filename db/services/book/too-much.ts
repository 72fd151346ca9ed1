import { refuse } from '../../contract/refusal.ts'
import { type Manner, massToType } from '../../domain/amounts/in-words.ts'
import type { Outgoing } from '../../domain/ledger/movement.ts'
import { message } from '../../messages/message.ts'
import type { LotRow } from '../../queries/lot-rows.ts'
import { amountTold, balanceOf, countDoubt } from './amounts.ts'

/** Refuses an amount beyond the balance, with the balance and what can be done. */
export function refuseTooMuch(
  row: LotRow,
  out: Extract<Outgoing, { kind: 'not-enough' }>,
  field: string,
  manner: Manner,
): never {
  const lot = row.lotNumber
  const asked = amountTold(out.asked, 0, row)
  const all =
    row.basis === 'weighed'
      ? massToType(out.balance.mass, manner)
      : message('amount.seeds', { count: out.balance.count, unit: row.countedUnit })
  const empty = out.balance.count === 0 && out.balance.mass === 0
  refuse(
    'not-enough-seed',
    empty
      ? message('stock.holds-none', { lot, asked })
      : message('stock.holds-less', { lot, held: amountTold(balanceOf(row), countDoubt(row), row), asked }),
    {
      field,
      todo: message(empty ? 'stock.holds-none-todo' : 'stock.holds-less-todo'),
      choices: empty ? [] : [all],
    },
  )
}
