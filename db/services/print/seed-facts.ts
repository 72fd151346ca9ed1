import { toFigures } from '../../domain/amounts/in-words.ts'
import type { HarvestYear } from '../../domain/dates/harvest-year.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import type { LetterGiftRow } from '../../queries/tray-rows.ts'

/** A harvest year as it stands on a label or in a letter. */
export function harvestOnPaper(harvest: HarvestYear, { text }: Texts): string {
  switch (harvest.kind) {
    case 'unknown':
      return text('paper.harvest-unknown')
    case 'span':
      return `${harvest.from}–${harvest.to}`
    case 'year':
      return harvest.about ? text('paper.harvest-about', { year: `${harvest.year}` }) : `${harvest.year}`
  }
}

/** An amount by the number that was observed: '12.5 g', '50 seeds', 'about 200 seeds'. */
export function amountOnPaper(
  {
    count,
    massMg,
    measured,
    countedUnit: unit,
  }: Pick<LetterGiftRow, 'count' | 'massMg' | 'measured' | 'countedUnit'>,
  texts: Texts,
): string {
  if (measured === 'mass') return texts.value({ mg: massMg, about: 'where-rounded' })
  // Less than half a seed of doubt is none.
  const about = measured === 'estimate' && count * ESTIMATE_DOUBT >= 0.5
  return about
    ? texts.say(message('amount.seeds-about', { count: toFigures(count, 2), unit }))
    : texts.say(message('amount.seeds', { count, unit }))
}

/** By how much of itself a guessed number may be off. */
const ESTIMATE_DOUBT = 0.25
