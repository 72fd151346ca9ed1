import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { giftsNotThanked } from '../../queries/tray-rows.ts'
import type { Writes } from '../book/context.ts'
import { toTray } from '../book/tray.ts'

/** The most letters that are put into the tray at once: as many as can be printed together. */
const MOST_LETTERS = 500

/** Puts letters into the tray for all gifts of a time that nobody was thanked for yet; one page for each donor. */
export const addPeriodLetters: Writes<'tray.add-letters'> = (writing, { from, until }) => {
  if (from > until) {
    refuse('days-out-of-order', message('letters.days-out-of-order'), {
      field: 'from',
      todo: message('letters.days-out-of-order-todo'),
    })
  }
  const gifts = giftsNotThanked(writing.sqlite, from, until)
  const write = gifts.filter(({ mayWrite }) => mayWrite === 1)
  const notAgreed = donorsOf(gifts.filter(({ mayWrite }) => mayWrite !== 1))
  if (write.length === 0) {
    refuse('nothing-to-print', message('letters.none-waits', { notAgreed }), {
      field: 'from',
      todo: message('letters.none-waits-todo'),
    })
  }
  if (write.length > MOST_LETTERS) {
    refuse('too-many', message('letters.too-many', { letters: write.length }), {
      field: 'from',
      todo: message('letters.too-many-todo', { most: MOST_LETTERS }),
    })
  }
  const itemIds = write.map(({ accessionId }) => toTray(writing, { kind: 'letter', accessionId }))
  const letters = donorsOf(write)
  const said = message('letters.put-into-tray', { donors: letters, notAgreed })
  return { itemIds, letters, said, undoable: true }
}

function donorsOf(gifts: readonly { readonly donorId: number }[]): number {
  return new Set(gifts.map(({ donorId }) => donorId)).size
}
