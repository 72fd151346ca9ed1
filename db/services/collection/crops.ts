import { sql } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { plantCaution } from '../../domain/cautions/plant-caution.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import { unknownOf } from '../../domain/crops/unknown.ts'
import { assumedViability } from '../../domain/germination/assumed-viability.ts'
import { plantsFor } from '../../domain/needs/population-goal.ts'
import type { ViabilityConstants } from '../../domain/viability/constants.ts'
import { regrowThreshold } from '../../domain/viability/regrow-threshold.ts'
import { gramsPerHundred, hundredSeedWeight } from '../../domain/weights/hundred-seed-weight.ts'
import { everydayNames, sourceInWords } from '../../migrations/crop-table.ts'
import { crop } from '../../schema/reference-tables.ts'
import type { Reading, Reads } from '../book/context.ts'
import { type CropRow, cropOrRefuse } from '../book/crop-rows.ts'
import { assumedTold } from '../book/living-stock.ts'
import { settingsOf } from '../book/settings.ts'

/** Every crop by its name, with what people call it. */
export function listCrops(reading: Reading): Result<'crop.list'> {
  const rows = reading.db
    .select({
      cropId: crop.id,
      commonName: crop.commonName,
      species: crop.species,
      own: sql<boolean>`${crop.addedEntryId} IS NOT NULL`.mapWith(Boolean),
      packetSeeds: crop.packetSeeds,
    })
    .from(crop)
    .orderBy(crop.nameFolded)
    .all()
  return { crops: rows.map((row) => ({ ...row, ...everydayNames(row.cropId) })) }
}

/** A crop with its figures, where each comes from, and what is unknown. Refuses one that is not there. */
export const getCrop: Reads<'crop.get'> = (reading, input) => {
  const row = cropOrRefuse(reading, input.cropId, 'cropId')
  const assumed = assumedViability(row)
  const hundred = row.hundredSeedWeightUg
  return {
    cropId: row.id,
    commonName: row.commonName,
    species: row.species,
    family: row.family,
    countedUnit: countedUnit(row.countedUnit),
    keepsMonths: row.keepsMonths,
    hundredSeedWeightG: hundred === null ? null : gramsPerHundred(hundredSeedWeight(hundred)),
    plausibleWeightG:
      row.plausibleLowG === null || row.plausibleHighG === null
        ? null
        : [row.plausibleLowG, row.plausibleHighG],
    packetSeeds: row.packetSeeds,
    matingSystem: row.matingSystem,
    pollination: row.pollination,
    lifeCycle: row.lifeCycle,
    isolationHomeM: row.isolationHomeM,
    isolationStrictM: row.isolationStrictM,
    laterSowingDays: row.laterSowingDays,
    bedArea: row.bedArea,
    seedExtraction: row.seedExtraction,
    viabilityConstants: figuresOf(row.viabilityConstants),
    plantsToKeep: row.ownPlants ?? plantsFor(row, settingsOf(reading).grade),
    plantsToKeepIsOverride: row.ownPlants !== null,
    viabilityThreshold: regrowThreshold(row.ownThreshold, settingsOf(reading)).part,
    viabilityThresholdIsOverride: row.ownThreshold !== null,
    daysToSeed: row.ownDaysToSeed ?? row.daysToSeed,
    daysToSeedIsOverride: row.ownDaysToSeed !== null,
    ownReason: row.ownReason,
    assumedViability: assumed.viability,
    assumedViabilityNote: assumedTold(assumed.viability, assumed.basis),
    storageClass: row.storageClass,
    notes: cells(row)['notes'] === null ? null : String(cells(row)['notes']),
    own: row.addedEntryId !== null,
    unknown: [...unknownOf(row)],
    caution: plantCaution(row.commonName, row.species) ?? '',
    facts: sourcedFacts(row),
  }
}

function figuresOf(constants: string | null): Result<'crop.get'>['viabilityConstants'] {
  if (constants === null) return null
  const { ke, cw, ch, cq } = JSON.parse(constants) as ViabilityConstants
  return { ke, cw, ch, cq }
}

function cells(row: CropRow): Record<string, unknown> {
  return JSON.parse(row.reference)
}

/** All cells about germination share one source in the shipped table, but for a cell that has one of its own. */
function sourceKey(field: string, sources: Readonly<Record<string, unknown>>): string {
  return field.startsWith('germ_') && !(field in sources) ? 'germination' : field
}

function sourcedFacts(row: CropRow): Result<'crop.get'>['facts'] {
  const { sources, ...values } = cells(row) as {
    sources: Record<string, { source: string; confidence: string } | null>
  }
  return Object.entries(values).flatMap(([field, value]) => {
    const sourced = sources[sourceKey(field, sources)]
    if (value === null || !sourced) return []
    return [
      {
        field,
        value: cellInWords(value),
        sourced: { source: sourceInWords(sourced.source), confidence: sourced.confidence },
      },
    ]
  })
}

/** A cell as it is shown: a span as '25 to 56.7', a set of constants with each by its name. */
function cellInWords(value: unknown): string {
  if (Array.isArray(value)) return value.join(' to ')
  if (typeof value !== 'object' || value === null) return String(value)
  const { ke, cw, ch, cq } = value as ViabilityConstants
  return `KE ${ke}, CW ${cw}, CH ${ch}, CQ ${cq}`
}
