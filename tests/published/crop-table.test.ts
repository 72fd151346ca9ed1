import { describe, expect, test } from 'vitest'
import crops from '../../db/reference/crops.json' with { type: 'json' }
import federal from '../../db/reference/federal-germination-minimum.json' with { type: 'json' }
import sources from '../../db/reference/sources.json' with { type: 'json' }

type Cell = string | number | boolean | null | readonly number[]
const rows = crops as unknown as readonly (Record<string, Cell> & {
  id: string
  sources: Record<string, { source: string; confidence: string } | null>
})[]
const minimum: Record<string, number> = federal.rows

/** Which row of the federal list stands for which crop of ours. Crops of no row are not on the list. */
const FEDERAL_ROW: Readonly<Record<string, string>> = {
  bean: 'Bean, garden',
  'runner-bean': 'Bean, runner',
  'lima-bean': 'Bean, lima',
  'fava-bean': 'Broadbean',
  pea: 'Pea',
  cowpea: 'Cowpea',
  soybean: 'Soybean',
  'sweet-corn': 'Corn, sweet',
  tomato: 'Tomato',
  pepper: 'Pepper',
  eggplant: 'Eggplant',
  // A close relative, used as a stand-in.
  tomatillo: 'Tomato, husk',
  // The federal list knows pumpkin and squash as trade groups, not species; all three squashes take the squash row.
  'squash-pepo': 'Squash',
  'squash-maxima': 'Squash',
  'squash-moschata': 'Squash',
  cucumber: 'Cucumber',
  melon: 'Melon',
  watermelon: 'Watermelon',
  okra: 'Okra',
  lettuce: 'Lettuce',
  spinach: 'Spinach',
  beet: 'Beet',
  chard: 'Chard, Swiss',
  carrot: 'Carrot',
  parsnip: 'Parsnip',
  parsley: 'Parsley',
  dill: 'Dill',
  celery: 'Celery',
  onion: 'Onion',
  leek: 'Leek',
  chive: 'Chives',
  cabbage: 'Cabbage',
  broccoli: 'Broccoli',
  // Collards alone would be 80.
  kale: 'Kale',
  turnip: 'Turnip',
  napa: 'Chinese cabbage',
  mustard: 'Mustard, India',
  radish: 'Radish',
  sage: 'Sage',
  'summer-savory': 'Savory, summer',
  'garden-cress': 'Cress, garden',
  'corn-salad': 'Cornsalad',
  endive: 'Endive',
  chicory: 'Chicory',
  kohlrabi: 'Kohlrabi',
  sorrel: 'Sorrel',
  swede: 'Rutabaga',
  'brussels-sprouts': 'Brussels sprouts',
}

describe('federal minimum germination, 7 CFR 201.31 (seen in three copies)', () => {
  test('every crop has the figure of its row, and a crop of no row has none', () => {
    const ours = Object.fromEntries(rows.map((crop) => [crop.id, crop['us_federal_min_germination_pct']]))
    const published = Object.fromEntries(rows.map(({ id }) => [id, minimum[FEDERAL_ROW[id] ?? ''] ?? null]))
    expect(ours).toEqual(published)
    expect(Object.keys(FEDERAL_ROW)).toHaveLength(48)
  })

  test('the list has its 68 kinds, in whole percents of five', () => {
    expect(Object.keys(minimum)).toHaveLength(68)
    for (const percent of Object.values(minimum)) expect(percent % 5).toBe(0)
  })

  /** A second reading of the same rule, made apart from the first: the rows grouped by their figure (seen). */
  test.each([
    [50, ['Okra']],
    [55, ['Carrot', 'Celery', 'Pepper']],
    [60, ['Artichoke', 'Dill', 'Eggplant', 'Leek', 'Parsley', 'Parsnip']],
    [65, ['Beet', 'Chard, Swiss']],
    [70, ['Asparagus', 'Bean, garden', 'Bean, lima', 'Endive', 'Onion']],
    [
      75,
      [
        'Broadbean',
        'Broccoli',
        'Cabbage',
        'Cauliflower',
        'Kale',
        'Corn, sweet',
        'Cowpea',
        'Melon',
        'Pumpkin',
      ],
    ],
    [80, ['Collards', 'Cucumber', 'Lettuce', 'Pea']],
  ])('%s %%: %j', (percent, kinds) => {
    for (const kind of kinds) expect(minimum[kind], kind).toBe(percent)
  })
})

describe('hundred-seed weights', () => {
  /** 7 CFR 201.46, Table 1, 2015 annual edition (seen): 100 / seeds per gram; the middle where a span is printed. */
  test('what is taken from the federal table of seeds per gram is its arithmetic, to three figures', () => {
    const taken = rows.filter((crop) => crop.sources['hundred_seed_weight_g']?.source.startsWith('CFR46'))
    expect(taken).toHaveLength(43)
    for (const crop of taken) {
      const printed = crop['seeds_per_gram_federal']
      const perGram = Array.isArray(printed) ? (printed[0] + printed[1]) / 2 : Number(printed)
      expect(crop['hundred_seed_weight_g'], crop.id).toBe(Number((100 / perGram).toPrecision(3)))
    }
  })

  test('a thousand seeds weigh ten times a hundred', () => {
    for (const crop of rows) {
      expect(crop['thousand_seed_weight_g'], crop.id).toBeCloseTo(
        10 * Number(crop['hundred_seed_weight_g']),
        9,
      )
    }
  })

  test('every crop but garlic, grown from cloves, has a typical weight, inside its plausible band with all that was seen', () => {
    for (const crop of rows.filter(({ id }) => id !== 'garlic')) {
      const [low, high] = crop['hundred_seed_weight_plausible_band_g'] as [number, number]
      const seen = (crop['hundred_seed_weight_seen_range_g'] ?? []) as readonly number[]
      expect(low, crop.id).toBeGreaterThan(0)
      for (const grams of [...seen, Number(crop['hundred_seed_weight_g'])]) {
        expect(grams, crop.id).toBeGreaterThanOrEqual(low)
        expect(grams, crop.id).toBeLessThanOrEqual(high)
      }
      expect(seen.length === 0 || (seen[0] ?? 0) <= (seen[1] ?? 0), crop.id).toBe(true)
    }
  })
})

/** Derived rule of the table itself, not published: by the low end of the storage years. */
test('the storage class follows the low end of the storage years', () => {
  for (const crop of rows) {
    const years = crop['storage_years']
    const low = Array.isArray(years) ? years[0] : null
    const expected = low === null ? null : low <= 2 ? 'short' : low === 3 ? 'medium' : 'long'
    expect(crop['storage_class'], crop.id).toBe(expected)
  }
})

describe('where each value comes from', () => {
  /** Not figures of the trade: what names the crop, ties cells together or only comments on them. */
  const NOT_SOURCED = ['id', 'common_name', 'sources', 'notes', 'thousand_seed_weight_g']
  const sourceKey = (field: string, named: object) =>
    field.startsWith('germ_') && !(field in named) ? 'germination' : field

  test('every value has a source with its confidence, and no source stands without a value', () => {
    for (const crop of rows) {
      const filled = Object.keys(crop).filter((field) => crop[field] !== null && !NOT_SOURCED.includes(field))
      const named = Object.keys(crop.sources).filter((field) => crop.sources[field] !== null)
      expect(new Set(filled.map((field) => sourceKey(field, crop.sources))), crop.id).toEqual(new Set(named))
    }
  })

  test('the confidence is one of the seven that docs/sources.md explains', () => {
    const said = rows.flatMap((crop) => Object.values(crop.sources).map((source) => source?.confidence))
    expect(new Set(said.filter((confidence) => confidence !== undefined))).toEqual(
      new Set([
        'seen',
        'seen-weak',
        'part seen, part memory',
        'memory',
        'seen, converted',
        'seen, borrowed',
        'derived',
      ]),
    )
  })

  /** What a note warns of: the words of these are looked for, so that a new warning does not stay in a note alone. */
  const WARNS = /misprint|check before use|do not use|as a stand-in/i

  test('a value under a warning is not used, or is marked where it is used', () => {
    const warned = rows.filter((crop) => WARNS.test(`${crop['notes']} ${crop['germ_notes']}`))
    expect(warned.map(({ id }) => id)).toEqual(['tomatillo'])
    const marks = warned.map((crop) => [
      crop.sources['germination']?.confidence,
      crop.sources['us_federal_min_germination_pct']?.confidence,
    ])
    expect(marks).toEqual([['seen, borrowed', 'seen, borrowed']])
  })

  /** International rules for seed testing, from memory: the last count of chickpea on day 8, of these herbs on day 21. */
  test('the last day of a crop whose federal one is doubtful or missing is from memory, and says so', () => {
    const days = ['chickpea', 'thyme', 'sage', 'oregano', 'lemon-balm'].map((id) => {
      const crop = rows.find((row) => row.id === id)
      return [crop?.['germ_final_count_day'], crop?.sources['germ_final_count_day']?.confidence]
    })
    expect(days).toEqual([8, 21, 21, 21, 21].map((day) => [day, 'memory']))
  })

  test('every source code resolves in the key, and the key has no code that nothing uses', () => {
    const codesIn = (text: string) => text.match(/\b[A-Z][A-Z0-9]+\b|\bM\b/g) ?? []
    const cited = rows.flatMap((crop) =>
      Object.values(crop.sources).flatMap((source) => codesIn(source?.source ?? '')),
    )
    const inNotes = rows.flatMap((crop) => codesIn(String(crop['notes'] ?? '')))
    expect(cited.filter((code) => !(code in sources))).toEqual([])
    const used = new Set([...cited, ...inNotes])
    expect(Object.keys(sources).filter((code) => !used.has(code))).toEqual([])
    for (const { source, confidence } of Object.values(sources)) {
      expect(source).not.toBe('')
      expect(['seen', 'seen-weak', 'memory']).toContain(confidence)
    }
  })
})
