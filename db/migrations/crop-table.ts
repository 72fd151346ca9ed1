import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { CountedUnitName } from '../domain/crops/counted-unit.ts'
import type { SeedExtraction } from '../domain/season-plan/seed-extraction.ts'
import type { ViabilityConstants } from '../domain/viability/constants.ts'

const REFERENCE_FOLDER =
  process.env['COMMON_DRAWER_REFERENCE'] ?? join(dirname(fileURLToPath(import.meta.url)), '..', 'reference')

/** A row of the shipped crop table, as far as its cells are read one by one. */
interface ReferenceCrop {
  readonly id: string
  readonly common_name: string
  readonly species: string
  readonly family: string
  readonly hundred_seed_weight_g: number | null
  readonly hundred_seed_weight_plausible_band_g: readonly [number, number] | null
  readonly packet_seeds: readonly [number, number] | null
  readonly mating_system: string | null
  readonly plants_for_viable_seed: number | null
  readonly plants_for_genetic_preservation: number | null
  readonly plants_to_maintain_variety: readonly [number, number] | null
  readonly us_federal_min_germination_pct: number | null
  readonly us_state_min_germination_pct: number | null
  readonly storage_class: string | null
  readonly storage_years: readonly [number, number] | null
  readonly pollination: string | null
  readonly life_cycle: string | null
  readonly isolation_home_m: number | null
  readonly isolation_strict_m: number | null
  readonly bed_area: number | null
  readonly days_to_seed: number | null
  readonly later_sowing_days: number | null
  readonly counted_unit: CountedUnitName
  readonly keeps_months: number | null
  readonly seed_extraction: SeedExtraction | null
  readonly viability_constants: Omit<ViabilityConstants, 'source' | 'confidence'> | null
  readonly sources: Readonly<Record<string, { readonly source: string; readonly confidence: string } | null>>
}

/** The shipped crop table as rows for the crop table of a collection. Low ends where the table gives a span. */
export function readCropTable() {
  const crops: ReferenceCrop[] = JSON.parse(readFileSync(join(REFERENCE_FOLDER, 'crops.json'), 'utf8'))
  return crops.map((crop) => ({
    id: crop.id,
    commonName: crop.common_name,
    species: crop.species,
    family: crop.family,
    hundredSeedWeightUg:
      crop.hundred_seed_weight_g === null ? null : Math.round(crop.hundred_seed_weight_g * 1_000_000),
    plausibleLowG: crop.hundred_seed_weight_plausible_band_g?.[0] ?? null,
    plausibleHighG: crop.hundred_seed_weight_plausible_band_g?.[1] ?? null,
    packetSeeds: crop.packet_seeds?.[0] ?? null,
    matingSystem: crop.mating_system,
    plantsForSeed: crop.plants_for_viable_seed,
    plantsToConserve: crop.plants_for_genetic_preservation,
    plantsToMaintain: crop.plants_to_maintain_variety?.[0] ?? null,
    federalMinimumPercent: crop.us_federal_min_germination_pct,
    stateMinimumPercent: crop.us_state_min_germination_pct,
    storageClass: crop.storage_class,
    storageYears: crop.storage_years?.[0] ?? null,
    pollination: crop.pollination,
    lifeCycle: crop.life_cycle,
    isolationHomeM: crop.isolation_home_m,
    isolationStrictM: crop.isolation_strict_m,
    bedArea: crop.bed_area,
    daysToSeed: crop.days_to_seed,
    laterSowingDays: crop.later_sowing_days,
    countedUnit: crop.counted_unit,
    keepsMonths: crop.keeps_months,
    seedExtraction: crop.seed_extraction,
    viabilityConstants: constantsOf(crop),
    reference: JSON.stringify(crop),
  }))
}

/** The constants of a crop with their study, as the file keeps them; null where none were published. */
function constantsOf({ viability_constants: set, sources }: ReferenceCrop): string | null {
  const study = sources['viability_constants']
  if (set === null || !study) return null
  const confidence = study.confidence === 'seen' ? 'seen' : 'from memory'
  return JSON.stringify({ ...set, source: sourceInWords(study.source), confidence })
}

interface EverydayNames {
  readonly names: readonly string[]
  readonly place: number
}

let everyday: ReadonlyMap<string, EverydayNames> | null = null

/**
 * What people call a crop of the shipped table, in all languages there are, and its place among crops that share a name.
 *
 * A crop of the keeper's own has no other names, and is what its name means first.
 */
export function everydayNames(cropId: string): EverydayNames {
  everyday ??= readEverydayNames()
  return everyday.get(cropId) ?? { names: [], place: 0 }
}

/** Names by language: the first of each is the commonest. */
function readCropNames(): Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> {
  return JSON.parse(readFileSync(join(REFERENCE_FOLDER, 'crop-names.json'), 'utf8')).crops
}

const namesIn = new Map<string, ReadonlyMap<string, string>>()

/** What a crop of the shipped table is called most in a language; any other, and in English, as the book calls it. */
export function cropNameIn(commonName: string, language: string): string {
  if (language === 'en') return commonName
  const known = namesIn.get(language) ?? readNamesIn(language)
  namesIn.set(language, known)
  return known.get(commonName) ?? commonName
}

function readNamesIn(language: string): ReadonlyMap<string, string> {
  const names = readCropNames()
  return new Map(
    readCropTable().flatMap(({ id, commonName }) => {
      const [name = ''] = names[id]?.[language] ?? []
      return name === '' ? [] : [[commonName, name.charAt(0).toLocaleUpperCase(language) + name.slice(1)]]
    }),
  )
}

function readEverydayNames(): ReadonlyMap<string, EverydayNames> {
  return new Map(
    Object.entries(readCropNames()).map(([id, languages], at) => [
      id,
      { names: [...new Set(Object.values(languages).flat())], place: at + 1 },
    ]),
  )
}

let sourceNames: Readonly<Record<string, { readonly source: string }>> | null = null

/** Spells out the codes by which the crop table names its sources: 'CFR46' becomes the rule and its edition. */
export function sourceInWords(codes: string): string {
  sourceNames ??= JSON.parse(
    readFileSync(join(REFERENCE_FOLDER, 'sources.json'), 'utf8'),
  ) as typeof sourceNames
  return codes.replace(/\b[A-Z][A-Z0-9]*\b/g, (code) => sourceNames?.[code]?.source ?? code)
}
