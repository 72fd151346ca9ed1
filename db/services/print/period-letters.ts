import type { ParsedInput, WriteResult } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { giftsNotThanked } from '../../queries/tray-rows.ts'
import type { Writing } from '../book/context.ts'
import { toTray } from '../book/tray.ts'

/** The most letters that are put into the tray at once: as many as can be printed together. */
const MOST_LETTERS = 500

/** Puts letters into the tray for all gifts of a time that nobody was thanked for yet; one page for each donor. */
export function addPeriodLetters(
  writing: Writing,
  { from, until }: ParsedInput<'tray.add-letters'>,
): WriteResult<'tray.add-letters'> {
  if (from > until) {
    refuse('days-out-of-order', 'The first day comes after the last one.', {
      field: 'from',
      todo: 'Exchange them, or choose other days.',
    })
  }
  const gifts = giftsNotThanked(writing.sqlite, from, until)
  const write = gifts.filter(({ mayWrite }) => mayWrite === 1)
  const notAgreed = donorsOf(gifts.filter(({ mayWrite }) => mayWrite !== 1))
  const left = notAgreed === 0 ? '' : `; ${donorsInWords(notAgreed)} not agreed to be written to`
  if (write.length === 0) {
    refuse('nothing-to-print', `No gift of that time waits for a letter${left}.`, {
      field: 'from',
      todo: 'Choose other days, or look under Printed before.',
    })
  }
  if (write.length > MOST_LETTERS) {
    refuse('too-many', `There are ${write.length} letters to write, more than can be printed at once.`, {
      field: 'from',
      todo: `Choose a shorter time, with at most ${MOST_LETTERS}.`,
    })
  }
  const itemIds = write.map(({ accessionId }) => toTray(writing, { kind: 'letter', accessionId }))
  const letters = donorsOf(write)
  const said = `Put letters to ${letters === 1 ? 'one donor' : `${letters} donors`} into the print tray${left}`
  return { itemIds, letters, said, undoable: true }
}

function donorsOf(gifts: readonly { readonly donorId: number }[]): number {
  return new Set(gifts.map(({ donorId }) => donorId)).size
}

function donorsInWords(count: number): string {
  return count === 1 ? 'one donor has' : `${count} donors have`
}
