import type { Band } from './band.ts'

/**
 * Further ahead nothing is promised for seed kept at home, years: jars leak, doors are opened, power fails. Judgement, no
 * source; the equation alone would promise centuries.
 */
export const HOME_FAR_YEARS = 20

/** Years that seed should keep at home, with how sure that is: 'about 4 years, between 2 and 9'. */
export function homeYearsInWords({ low, middle, high }: Band): string {
  if (high < 0.5) return 'sow it this season'
  const least = low < 0.5 ? 'less than one' : round(low)
  if (middle > HOME_FAR_YEARS) {
    return low > HOME_FAR_YEARS
      ? `more than ${HOME_FAR_YEARS} years`
      : `more than ${HOME_FAR_YEARS} years, but perhaps only ${least}`
  }
  const most = high > HOME_FAR_YEARS ? `more than ${HOME_FAR_YEARS}` : round(high)
  const about =
    middle < 0.5 ? 'less than one year' : `about ${round(middle)} ${round(middle) === '1' ? 'year' : 'years'}`
  return `${about}, between ${least} and ${most}`
}

function round(years: number): string {
  return String(Math.max(1, Math.round(years)))
}
