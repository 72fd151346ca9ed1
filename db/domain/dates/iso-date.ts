/** A calendar date as 'YYYY-MM-DD'. The domain has no clock: today is always passed in. */
export type IsoDate = string & { readonly __brand: 'IsoDate' }

const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** Makes an {@link IsoDate}. Throws RangeError unless the text is a real date between 1000 and 9999. */
export function isoDate(text: string): IsoDate {
  if (!isIsoDate(text)) throw new RangeError(`Not a date: ${text}`)
  return text
}

/** Whether a text is a real calendar date written 'YYYY-MM-DD'. */
export function isIsoDate(text: string): text is IsoDate {
  const parts = /^([1-9]\d{3})-(\d{2})-(\d{2})$/.exec(text)
  if (!parts) return false
  const month = Number(parts[2])
  const day = Number(parts[3])
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(Number(parts[1]), month)
}

function daysInMonth(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  return month === 2 && leap ? 29 : (DAYS_IN_MONTH[month - 1] ?? 0)
}

/** The year of a date. */
export function yearOf(date: IsoDate): number {
  return Number(date.slice(0, 4))
}
