import { type Message, message } from '../../messages/message.ts'
import type { Band } from './band.ts'

/**
 * Further ahead nothing is promised for seed kept at home, years: jars leak, doors are opened, power fails. Judgement, no
 * source; the equation alone would promise centuries.
 */
export const HOME_FAR_YEARS = 20

/** Years that seed should keep at home, with how sure that is: 'about 4 years, between 2 and 9'. */
export function homeYearsTold({ low, middle, high }: Band): Message {
  if (high < 0.5) return message('forecast.home-now')
  const years = HOME_FAR_YEARS
  const least = whole(low)
  if (low > years) return message('forecast.home-far', { years })
  if (middle > years) return message('forecast.home-far-perhaps', { years, least })
  return message('forecast.home-about', {
    middle: whole(middle),
    least,
    most: high > years ? years : whole(high),
    far: high > years ? 'yes' : 'no',
  })
}

/** Whole years; 0 for less than one. */
function whole(years: number): number {
  return years < 0.5 ? 0 : Math.max(1, Math.round(years))
}
