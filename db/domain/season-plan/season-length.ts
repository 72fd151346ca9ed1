/** Whether a garden's season is shorter than what a crop usually needs; never where either is not known. */
export function isSeasonShort(needed: number | null, seasonDays: number | null): boolean {
  return needed !== null && seasonDays !== null && seasonDays < needed
}

/** What the grower is told where the season is short; '' where it is not. `laterBy`: days after the usual time of sowing. */
export function shortSeasonInWords(
  crop: string,
  needed: number | null,
  site: { readonly name: string; readonly seasonDays: number | null },
  laterBy: number,
): string {
  if (!isSeasonShort(needed, site.seasonDays)) return ''
  const takes = laterBy === 0 ? 'usually takes' : `sown ${laterBy} days later takes`
  return `${crop} ${takes} ${needed} days without frost to ripe seed, and ${site.name} has ${site.seasonDays}: raise it indoors first, cover it in autumn, or choose a longer season.`
}
