import type { Span } from './span.ts'

/** The constants of the seed viability equation for one crop, with how far they are to be trusted. */
export interface ViabilityConstants {
  readonly name: string
  /** Crops of the crop table that the set holds for: the species it was fitted on, nothing borrowed. */
  readonly cropIds: readonly string[]
  readonly ke: number
  readonly cw: number
  readonly ch: number
  readonly cq: number
  /** Where the set was fitted, degrees C and percent of fresh weight; null where that is not known here. */
  readonly fittedCelsius: Span | null
  readonly fittedPercent: Span | null
  /** The published moisture below which drying no longer helps, percent of fresh weight; null: by the crop's oil. */
  readonly lowestPercent: number | null
  readonly source: string
  /** Whether the figures were seen in the source or recalled. */
  readonly confidence: 'seen' | 'from memory'
  readonly note: string
}

/** The moisture below which nothing is worked out where a crop's own limit is not known: judgement, see docs/sources. */
export const LOWEST_WORKING_PERCENT = 5

/** Dickie, Ellis, Kraak, Ryder and Tompsett 1990, Ann. Bot. 65:197-204 (abstract seen): eight species did not differ. */
const UNIVERSAL_CELSIUS: Span = { from: -13, to: 90 }

/** What the twelve crops of one study have in common: its constants of temperature, and how far it went. */
const TWELVE_CROPS = {
  ch: 0.0322,
  cq: 0.000454,
  fittedCelsius: { from: 0, to: 50 },
  fittedPercent: { from: 2, to: 25 },
  lowestPercent: null,
  source: 'Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract)',
  confidence: 'seen',
} as const

/**
 * Published sets. KE and CW of one set belong together; where two conflict, the one that was seen is used and the other has
 * no crop. Sweet corn does not take field maize's: it is known to age faster (common practice, no source).
 */
export const VIABILITY_CONSTANTS: readonly ViabilityConstants[] = [
  {
    name: 'maize',
    cropIds: ['maize'],
    ke: 9.993,
    cw: 5.993,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'sorghum',
    cropIds: ['sorghum'],
    ke: 9.381,
    cw: 5.379,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'pearl millet',
    cropIds: [],
    ke: 9.336,
    cw: 5.54,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'beet (sugar beet)',
    cropIds: ['beet', 'chard'],
    ke: 8.988,
    cw: 4.969,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'African rice',
    cropIds: [],
    ke: 8.786,
    cw: 4.727,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'wheat',
    cropIds: ['wheat'],
    ke: 8.498,
    cw: 4.836,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'foxtail millet',
    cropIds: [],
    ke: 8.478,
    cw: 4.829,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'sugarcane',
    cropIds: [],
    ke: 8.454,
    cw: 4.964,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'finger millet',
    cropIds: [],
    ke: 8.288,
    cw: 4.345,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'kodo millet',
    cropIds: [],
    ke: 8.138,
    cw: 4.435,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'rice',
    cropIds: ['rice'],
    ke: 8.096,
    cw: 4.246,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'potato (true seed)',
    cropIds: ['potato-tps'],
    ke: 8.037,
    cw: 5.152,
    ...TWELVE_CROPS,
    note: '',
  },
  {
    name: 'pepper',
    cropIds: ['pepper'],
    ke: 7.767,
    cw: 4.67,
    ch: 0.0329,
    cq: 0.000478,
    fittedCelsius: UNIVERSAL_CELSIUS,
    fittedPercent: { from: 7, to: 12.1 },
    lowestPercent: null,
    source: 'Demir et al. 2009, HortScience 44:1679-1682 (abstract)',
    confidence: 'seen',
    note: '',
  },
  {
    name: 'radish',
    cropIds: ['radish'],
    ke: 6.54,
    cw: 3.22,
    ch: 0.0329,
    cq: 0.000478,
    fittedCelsius: UNIVERSAL_CELSIUS,
    fittedPercent: { from: 6, to: 13 },
    lowestPercent: null,
    source: 'Coronado et al. 2023, Seed Sci. Technol. 51:319-327 (abstract)',
    confidence: 'seen',
    note: 'temperature constants assumed universal',
  },
  {
    name: 'spider plant',
    cropIds: [],
    ke: 7.656,
    cw: 3.55,
    ch: 0.0329,
    cq: 0.000478,
    fittedCelsius: UNIVERSAL_CELSIUS,
    fittedPercent: { from: 7.3, to: 15.3 },
    lowestPercent: null,
    source: 'Kaweya et al. 2026, Seed Sci. Technol. 54(1) (abstract)',
    confidence: 'seen',
    note: 'temperature constants assumed universal',
  },
  {
    name: 'common bean (field bean)',
    cropIds: ['bean'],
    ke: 9.08,
    cw: 5.2,
    ch: 0.0057,
    cq: 0.00079,
    fittedCelsius: { from: 20, to: 60 },
    fittedPercent: { from: 12, to: 24 },
    lowestPercent: null,
    source: 'Wilson, McDonald & St. Martin 1989, Crop Sci. 29(2) (abstract)',
    confidence: 'seen',
    note: 'fitted on moist, warm seed only: 12 to 24 % and 20 to 60 °C',
  },
  {
    name: 'barley',
    cropIds: ['barley'],
    ke: 9.983,
    cw: 5.896,
    ch: 0.04,
    cq: 0.000428,
    fittedCelsius: { from: 3, to: 90 },
    fittedPercent: { from: 5.5, to: 24.6 },
    lowestPercent: null,
    source: 'Ellis & Roberts 1980, Ann. Bot. 45:31-37',
    confidence: 'from memory',
    note: '',
  },
  {
    name: 'onion',
    cropIds: ['onion'],
    ke: 6.975,
    cw: 3.47,
    ch: 0.04,
    cq: 0.000428,
    fittedCelsius: null,
    fittedPercent: null,
    lowestPercent: null,
    source: 'Ellis & Roberts 1981, Seed Sci. Technol. 9:373-409',
    confidence: 'from memory',
    note: '',
  },
  {
    name: 'chickpea',
    cropIds: ['chickpea'],
    ke: 9.07,
    cw: 4.82,
    ch: 0.045,
    cq: 0.000324,
    fittedCelsius: null,
    fittedPercent: null,
    lowestPercent: null,
    source: 'Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82',
    confidence: 'from memory',
    note: 'the moisture constant agrees with published figures that were seen',
  },
  {
    name: 'cowpea',
    cropIds: ['cowpea'],
    ke: 8.69,
    cw: 4.715,
    ch: 0.026,
    cq: 0.000498,
    fittedCelsius: null,
    fittedPercent: null,
    lowestPercent: null,
    source: 'Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82',
    confidence: 'from memory',
    note: '',
  },
  {
    name: 'soybean',
    cropIds: ['soybean'],
    ke: 7.748,
    cw: 3.979,
    ch: 0.053,
    cq: 0.000228,
    fittedCelsius: null,
    fittedPercent: null,
    lowestPercent: null,
    source: 'Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82',
    confidence: 'from memory',
    note: '',
  },
  {
    name: 'lettuce',
    cropIds: ['lettuce'],
    ke: 8.218,
    cw: 4.797,
    ch: 0.0489,
    cq: 0.000365,
    fittedCelsius: null,
    fittedPercent: { from: LOWEST_WORKING_PERCENT, to: 15 },
    lowestPercent: null,
    source: 'Kraak & Vos 1987, Ann. Bot. 59:343-349',
    confidence: 'from memory',
    note: '',
  },
  {
    name: 'rice (alternative set)',
    cropIds: [],
    ke: 8.668,
    cw: 5.03,
    ch: 0.0329,
    cq: 0.000478,
    fittedCelsius: UNIVERSAL_CELSIUS,
    fittedPercent: null,
    lowestPercent: null,
    source: 'Ellis, Hong & Roberts 1992, Ann. Bot. 69:53-58',
    confidence: 'from memory',
    note: 'conflicts with the set of 2007, which was seen and is used',
  },
  {
    name: 'pea',
    cropIds: ['pea'],
    ke: 9.858,
    cw: 5.39,
    ch: 0.0329,
    cq: 0.000478,
    fittedCelsius: UNIVERSAL_CELSIUS,
    fittedPercent: null,
    lowestPercent: 6.2,
    source: 'Ellis, Hong & Roberts 1989, Ann. Bot. 63:601-611',
    confidence: 'from memory',
    note: 'temperature constants of the eight-species study',
  },
  {
    name: 'oilseed rape',
    cropIds: [],
    ke: 7.718,
    cw: 4.54,
    ch: 0.0329,
    cq: 0.000478,
    fittedCelsius: UNIVERSAL_CELSIUS,
    fittedPercent: null,
    lowestPercent: null,
    source: 'Ellis, Hong & Roberts 1989, Ann. Bot. 63:601-611',
    confidence: 'from memory',
    note: 'temperature constants of the eight-species study; the moisture constant rounded, 4.5, was seen',
  },
  {
    name: 'sunflower',
    cropIds: ['sunflower'],
    ke: 6.74,
    cw: 4.16,
    ch: 0.0329,
    cq: 0.000478,
    fittedCelsius: UNIVERSAL_CELSIUS,
    fittedPercent: null,
    lowestPercent: null,
    source: 'Ellis, Hong & Roberts 1988',
    confidence: 'from memory',
    note: 'temperature constants of the eight-species study',
  },
]

/** The set of a crop of the crop table, or null where none was published: then nothing is borrowed from another crop. */
export function constantsOf(cropId: string): ViabilityConstants | null {
  return VIABILITY_CONSTANTS.find(({ cropIds }) => cropIds.includes(cropId)) ?? null
}
