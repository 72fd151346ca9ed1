import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { stocktakeSheet } from '../../paper/stocktake-sheet.ts'
import { lotsToCount } from '../../queries/lot-rows.ts'
import { amountTold, balanceOf, countDoubt } from '../book/amounts.ts'
import type { Reading } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'
import { documentFacts, made } from './document.ts'

/** The stocktake sheet of some places, or of all in which lots lie, each with its lots in order of number. */
export async function printStocktakeSheet(
  reading: Reading,
  { placeIds }: ParsedInput<'stocktake.sheet'>,
): Promise<Result<'stocktake.sheet'>> {
  placeIds.forEach((placeId, index) => {
    placeOrRefuse(reading, placeId, `placeIds.${index}`)
  })
  const byPlace = Map.groupBy(lotsToCount(reading.sqlite, placeIds), ({ place }) => place ?? '')
  if (byPlace.size === 0) {
    refuse('nothing-to-print', message('print.nothing-to-count'), {
      field: 'placeIds',
      todo: message('print.nothing-to-count-todo'),
    })
  }
  const facts = await documentFacts(reading, message('paper.title-stocktake'))
  const printed = await stocktakeSheet({
    places: [...byPlace].map(([path, rows]) => ({
      path,
      lots: rows.map((row) => ({
        number: row.lotNumber,
        name: `${row.crop} ‘${row.variety}’`,
        book: facts.texts.say(amountTold(balanceOf(row), countDoubt(row), row)),
      })),
    })),
    ...facts,
  })
  return made(printed, `stocktake-${reading.today}.pdf`)
}
