import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { addYears } from '../../domain/dates/day-arithmetic.ts'
import { PEOPLE_SINCE_YEARS } from '../../domain/needs/rescue.ts'
import {
  carriedWith,
  type RescueFacts,
  type RescueStop,
  rescueOrder,
} from '../../domain/rescue-order/rescue-order.ts'
import { type Message, message } from '../../messages/message.ts'
import { flowingDocument } from '../../paper/drawing/flowing-document.ts'
import { type FireSheet, fireSheetPart } from '../../paper/fire-sheet.ts'
import { duplicateRows } from '../../queries/duplicate-rows.ts'
import { hardToReplace, holdersSince, type LotHere, lotsHere, placesById } from '../../queries/rescue-rows.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { judgements } from '../regrow/judgements.ts'
import { documentFacts, made } from './document.ts'
import { seedOnPaper } from './seed-facts.ts'

/** Places on the sheet: what can be carried in a few minutes, on two pages. */
const MOST_PLACES = 10
/** Lots named of a place; the rest is counted. */
const MOST_NAMED = 5
/** Lots without a place are no place to carry. */
const NOWHERE = 0

interface Rescued extends RescueFacts {
  readonly lots: readonly LotHere[]
}

/** The sheet for a fire: whom to call, what to carry out first and from where, and what lies elsewhere already. */
export async function renderFireSheet(reading: Reading): Promise<Result<'fire-sheet.render'>> {
  const { accessions, unplaced } = rescued(reading)
  const stops = rescueOrder(accessions).slice(0, MOST_PLACES)
  if (stops.length === 0) {
    refuse('nothing-to-print', message('fire-sheet.nothing-here'), {
      todo: message('fire-sheet.nothing-here-todo'),
    })
  }
  const facts = await documentFacts(reading, message('fire-sheet.title'))
  const places = placesById(reading.sqlite)
  const sheet: FireSheet = {
    libraryName: facts.libraryName,
    date: facts.date,
    whomToCall: settingsOf(reading).whomToCall,
    stops: stops.map((stop) => ({
      path: places.get(stop.place)?.path ?? '',
      lost: lostTold(stop),
      lots: stop.accessions.slice(0, MOST_NAMED).map((accession) => ({
        numbers: lotsIn(accession, stop.place, places).map(({ lotNumber }) => lotNumber),
        seed: accession.lots[0] === undefined ? '' : seedOnPaper(accession.lots[0], facts.texts),
        why: whyTold(accession),
      })),
      more: Math.max(0, stop.accessions.length - MOST_NAMED),
    })),
    unplaced,
    elsewhere: duplicateRows(reading.sqlite, null).length,
  }
  const printed = await flowingDocument({ parts: [fireSheetPart(sheet, facts.texts)], ...facts })
  return { ...made(printed, `if-the-house-burns-${reading.today}.pdf`), listed: stops.length }
}

/** What is known of every accession with living seed here, and how many lots lie in no place. */
function rescued(reading: Reading): { accessions: Rescued[]; unplaced: number } {
  const { sqlite, today } = reading
  const judged = judgements.all(reading)
  const sources = new Map<number, number>()
  for (const { varietyId, living } of judged.values())
    if (living > 0) sources.set(varietyId, (sources.get(varietyId) ?? 0) + 1)
  const holders = holdersSince(sqlite, addYears(today, -PEOPLE_SINCE_YEARS))
  const rare = hardToReplace(sqlite)
  const places = placesById(sqlite)
  const lots = lotsHere(sqlite)
  const accessions = [...Map.groupBy(lots, ({ accessionId }) => accessionId)].flatMap(
    ([accessionId, here]) => {
      const of = judged.get(accessionId)
      if (of === undefined || of.living + of.setAside === 0) return []
      const others = (sources.get(of.varietyId) ?? 0) - (of.living > 0 ? 1 : 0)
      const carried = here.map(({ placeId }) => (placeId === null ? NOWHERE : carriedWith(placeId, places)))
      return [
        {
          accessionId,
          lastOfVariety: others <= 0,
          elsewhere: of.elsewhere,
          holders: holders.get(accessionId) ?? 0,
          hardToReplace: rare.has(accessionId),
          places: [...new Set(carried)].filter((place) => place !== NOWHERE),
          lots: here,
        },
      ]
    },
  )
  return { accessions, unplaced: lots.filter(({ placeId }) => placeId === null).length }
}

function lotsIn({ lots }: Rescued, place: number, places: ReturnType<typeof placesById>): LotHere[] {
  return lots.filter(({ placeId }) => placeId !== null && carriedWith(placeId, places) === place)
}

/** What burns with a place for good, as far as anybody knows. */
function lostTold({ accessions }: RescueStop<Rescued>): Message {
  const gone = accessions.filter(({ lastOfVariety, elsewhere }) => lastOfVariety && !elsewhere)
  return message('fire-sheet.lost', { gone: gone.length, accessions: accessions.length })
}

function whyTold({ lastOfVariety, elsewhere, holders, hardToReplace: rare }: Rescued): Message {
  return message('fire-sheet.why', {
    alone: elsewhere ? 'no' : lastOfVariety ? 'yes' : 'variety',
    holders,
    rare: rare ? 'yes' : 'no',
  })
}
