import { toFigures } from '../../domain/amounts/in-words.ts'
import type { HarvestYear } from '../../domain/dates/harvest-year.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { cropNameIn } from '../../migrations/crop-table.ts'
import type { LetterGiftRow } from '../../queries/tray-rows.ts'

/** What people call a crop, in the language of whoever reads it. The keeper's own sheets have the book's name, as the screens do. */
export function cropOnPaper(crop: string, { locale }: Texts): string {
  return cropNameIn(crop, new Intl.Locale(locale).language)
}

/** A crop and its variety: 'Runner bean ‘Painted Quill’'. */
export function seedOnPaper(
  { crop, variety }: { readonly crop: string; readonly variety: string },
  texts: Texts,
): string {
  return `${cropOnPaper(crop, texts)} ‘${variety}’`
}

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
