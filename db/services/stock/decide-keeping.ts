import { refuse } from '../../contract/refusal.ts'
import { keepingValues } from '../../domain/keeping/keeping.ts'
import { message } from '../../messages/message.ts'
import { lotsOfAccessions } from '../../queries/lot-rows.ts'
import type { Writes } from '../book/context.ts'
import { setKeeping } from '../book/keeping.ts'
import { livingStockOf } from '../book/living-stock.ts'
import { settingsOf } from '../book/settings.ts'

export const decideKeeping: Writes<'accession.decide-keeping'> = (writing, input) => {
  const { accessionId, breeding, policy, on, reason } = input
  const [before] = lotsOfAccessions(writing.sqlite, [accessionId])
  if (before === undefined) refuse('not-found', message('stock.no-accession'), { field: 'accessionId' })
  if (policy === 'closed' && reason === '')
    refuse('reason-missing', message('keeping.say-why'), {
      field: 'reason',
      todo: message('keeping.say-why-todo'),
    })
  setKeeping(writing, { accessionId, breedingStatus: breeding, policy, onDate: on, reason })
  const stock = livingStockOf(lotsOfAccessions(writing.sqlite, [accessionId]), settingsOf(writing))
  const said = message('keeping.decided', {
    accession: before.accessionNumber,
    ...keepingValues({ breeding, policy }),
  })
  return { stock, said, undoable: true }
}
