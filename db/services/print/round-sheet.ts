import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { INSPECTIONS } from '../../domain/rounds/inspection.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { roundSheet, type SheetStop } from '../../paper/round-sheet.ts'
import type { Reading } from '../book/context.ts'
import { listDueRounds } from '../storage/rounds.ts'
import { documentFacts, made } from './document.ts'

/** The round sheet of some places, or of all that a round goes to, the one due first first. */
export async function printRoundSheet(
  reading: Reading,
  input: ParsedInput<'round.print'>,
): Promise<Result<'round.print'>> {
  const { places, cautions } = listDueRounds(reading)
  const wanted = new Set(input.placeIds)
  const stops = places.filter(({ placeId }) => wanted.size === 0 || wanted.has(placeId))
  if (stops.length === 0 || stops.length < wanted.size) {
    refuse('nothing-to-print', message('print.no-round'), {
      field: 'placeIds',
      todo: message('print.no-round-todo'),
    })
  }
  const looked = INSPECTIONS.filter((look) =>
    stops.some(({ looks }) => looks.some((each) => each.look === look)),
  )
  const facts = await documentFacts(reading, message('paper.title-round'))
  const { texts } = facts
  const printed = await roundSheet({
    stops: stops.map((stop) => sheetStop(stop, texts)),
    meanings: looked.map(
      (look) => `${capital(texts.text(`storage.look-${look}`))}: ${texts.text(`storage.look-for-${look}`)}`,
    ),
    cautions: cautions.map((caution) => (typeof caution === 'string' ? caution : texts.say(caution))),
    ...facts,
  })
  return made(printed, `round-sheet-${reading.today}.pdf`)
}

type RoundStop = Result<'round.list-due'>['places'][number]

function sheetStop({ path, lastOn, due, everyDays, looks, lots }: RoundStop, { text }: Texts): SheetStop {
  const last =
    lastOn === null ? message('paper.round-never') : message('paper.round-last', { day: { day: lastOn } })
  const next =
    due.when === 'later'
      ? message('paper.round-due-on', { day: { day: due.on } })
      : message('paper.round-due-now')
  return {
    path,
    standing: text('paper.round-standing', { every: everyDays, last, due: next }),
    looks: looks.map(({ look }) =>
      look === 'reading' ? text('paper.round-reading', TO_FILL) : capital(text(`storage.look-${look}`)),
    ),
    lotNumbers: lots.map(({ lotNumber }) => lotNumber),
  }
}

/** Lines to write on. */
const TO_FILL = { temperature: '______', humidity: '______' }

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
