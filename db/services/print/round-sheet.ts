import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { INSPECTIONS } from '../../domain/rounds/inspection.ts'
import type { Texts } from '../../messages/texts.ts'
import { textsOf } from '../../messages/texts-of.ts'
import { roundSheet, type SheetStop } from '../../paper/round-sheet.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { listDueRounds } from '../storage/rounds.ts'
import { dayOf, documentFacts, made } from './document.ts'

/** The round sheet of some places, or of all that a round goes to, the one due first first. */
export async function printRoundSheet(
  reading: Reading,
  input: ParsedInput<'round.print'>,
): Promise<Result<'round.print'>> {
  const { places, cautions } = listDueRounds(reading)
  const wanted = new Set(input.placeIds)
  const stops = places.filter(({ placeId }) => wanted.size === 0 || wanted.has(placeId))
  if (stops.length === 0 || stops.length < wanted.size) {
    refuse('nothing-to-print', 'No round goes there yet.', {
      field: 'placeIds',
      todo: 'Say of each place how often a round goes there: its card in Storage, ‘What it is meant for’.',
    })
  }
  const looked = INSPECTIONS.filter((look) =>
    stops.some(({ looks }) => looks.some((each) => each.look === look)),
  )
  const day = dayOf(reading)
  const texts = await textsOf(settingsOf(reading))
  const printed = await roundSheet({
    stops: stops.map((stop) => sheetStop(stop, day, texts)),
    meanings: looked.map(
      (look) => `${capital(texts.text(`storage.look-${look}`))}: ${texts.text(`storage.look-for-${look}`)}`,
    ),
    cautions: cautions.map((caution) => (typeof caution === 'string' ? caution : texts.say(caution))),
    ...(await documentFacts(reading, 'Round sheet')),
  })
  return made(printed, `round-sheet-${reading.today}.pdf`)
}

type RoundStop = Result<'round.list-due'>['places'][number]

function sheetStop(
  { path, lastOn, due, everyDays, looks, lots }: RoundStop,
  day: (iso: string) => string,
  { text }: Texts,
): SheetStop {
  const last = lastOn === null ? 'never walked to' : `walked to on ${day(lastOn)}`
  return {
    path,
    standing: `Every ${everyDays} days; ${last}; due ${due.when === 'later' ? `on ${day(due.on)}` : 'now'}`,
    looks: looks.map(({ look }) =>
      look === 'reading' ? 'Reading: ______ °C ______ %' : capital(text(`storage.look-${look}`)),
    ),
    lotNumbers: lots.map(({ lotNumber }) => lotNumber),
  }
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
