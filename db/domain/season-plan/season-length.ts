import { type Message, message } from '../../messages/message.ts'

/** Whether a garden's season is shorter than what a crop usually needs; never where either is not known. */
export function isSeasonShort(needed: number | null, seasonDays: number | null): boolean {
  return needed !== null && seasonDays !== null && seasonDays < needed
}

/** What the grower is told where the season is short; '' where it is not. `laterBy`: days after the usual time of sowing. */
export function toldShortSeason(
  crop: string,
  needed: number | null,
  site: { readonly name: string; readonly seasonDays: number | null },
  laterBy: number,
): Message | '' {
  const { name: garden, seasonDays: days } = site
  if (needed === null || days === null || !isSeasonShort(needed, days)) return ''
  return laterBy === 0
    ? message('season.short', { crop, needed, garden, days })
    : message('season.short-later', { crop, later: laterBy, needed, garden, days })
}
