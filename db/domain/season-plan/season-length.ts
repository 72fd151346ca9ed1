/**
 * Days without frost that a tender crop usually takes from sowing or planting out to ripe seed.
 *
 * From memory, after what seed growers usually say; early varieties are quicker. Crops that stand frost are not here:
 * a season without frost does not bound them.
 */
const DAYS_TO_SEED: Readonly<Record<string, number>> = {
  bean: 100,
  'runner-bean': 120,
  'lima-bean': 120,
  cowpea: 110,
  soybean: 120,
  peanut: 140,
  'sweet-corn': 110,
  maize: 120,
  sorghum: 120,
  rice: 140,
  amaranth: 120,
  tomato: 90,
  tomatillo: 100,
  pepper: 110,
  eggplant: 110,
  cucumber: 100,
  melon: 100,
  watermelon: 110,
  'squash-pepo': 115,
  'squash-maxima': 120,
  'squash-moschata': 135,
  'bottle-gourd': 140,
  okra: 110,
  basil: 120,
  sunflower: 110,
}

/** Days without frost that a crop usually needs to ripe seed; null where frost does not bound it or nothing is known. */
export function daysToSeed(cropId: string): number | null {
  return DAYS_TO_SEED[cropId] ?? null
}

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
