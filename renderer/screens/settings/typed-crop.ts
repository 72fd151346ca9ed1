import type { CallInput, Value } from '../../../db/contract/contract.ts'
import { readNumber, spellDecimal } from '../../../db/domain/amounts/read-number.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'

type Crop = Value<'crop.get'>
type Correction = CallInput<'crop.change'>['correction']

/** What is said of a crop of the keeper's own, as typed; empty: not known. */
export interface TypedCrop {
  readonly name: string
  readonly species: string
  readonly family: string
  readonly packetSeeds: string
  readonly hundredSeedWeightG: string
}

/** What the keeper wants kept of a crop, as typed; empty: the usual figure. */
export interface TypedKeeping {
  readonly plantsToKeep: string
  /** Of a hundred seeds. */
  readonly viabilityThreshold: string
  readonly daysToSeed: string
  readonly reason: string
}

export function typedCropFrom(crop: Crop): TypedCrop {
  const { commonName: name, species, family, packetSeeds, hundredSeedWeightG } = crop
  return {
    name,
    species,
    family,
    packetSeeds: packetSeeds === null ? '' : String(packetSeeds),
    hundredSeedWeightG: hundredSeedWeightG === null ? '' : spellDecimal(hundredSeedWeightG),
  }
}

export function typedKeepingFrom(crop: Crop): TypedKeeping {
  const threshold = crop.viabilityThresholdIsOverride ? crop.viabilityThreshold : null
  return {
    plantsToKeep: crop.plantsToKeepIsOverride ? String(crop.plantsToKeep) : '',
    viabilityThreshold: threshold === null ? '' : String(Math.round(1_000 * threshold) / 10),
    daysToSeed: crop.daysToSeedIsOverride ? String(crop.daysToSeed) : '',
    reason: crop.ownReason,
  }
}

/** What was typed, read; `read` is null while a field has a problem. */
export interface ReadTyped<T, R> {
  readonly read: R | null
  readonly problems: Partial<Record<keyof T, string>>
}

/** Reads what was typed of a crop, and says which field cannot be read and how to type it. */
export function correctionOf(typed: TypedCrop): ReadTyped<TypedCrop, Correction> {
  const packetSeeds = optional(typed.packetSeeds, (text) => between(wholeNumber(text), 1, 100_000))
  const weight = optional(typed.hundredSeedWeightG, (text) => between(decimal(text), 0.0001, 10_000))
  const problems = {
    ...(typed.name.trim() === '' ? { name: 'Type what people call it.' } : {}),
    ...(packetSeeds === undefined ? { packetSeeds: 'Type a whole number of seeds, or leave it empty.' } : {}),
    ...(weight === undefined
      ? { hundredSeedWeightG: 'Type grams, as 0.04, or leave it empty where nobody weighed any.' }
      : {}),
  }
  if (packetSeeds === undefined || weight === undefined || typed.name.trim() === '') {
    return { read: null, problems }
  }
  const { name, species, family } = typed
  return {
    read: { name, species: species.trim(), family: family.trim(), packetSeeds, hundredSeedWeightG: weight },
    problems,
  }
}

/** Reads what is to be kept of a crop; the part that must sprout as a part of one. */
export function keepingOf(
  typed: TypedKeeping,
): ReadTyped<
  TypedKeeping,
  Pick<CallInput<'crop.change-policy'>, 'plantsToKeep' | 'viabilityThreshold' | 'daysToSeed' | 'reason'>
> {
  const plants = optional(typed.plantsToKeep, (text) => between(wholeNumber(text), 1, 10_000))
  const percent = optional(typed.viabilityThreshold, (text) =>
    between(decimal(text.replace('%', '')), 5, 100),
  )
  const days = optional(typed.daysToSeed, (text) => between(wholeNumber(text), 20, 366))
  const problems = {
    ...(plants === undefined ? { plantsToKeep: 'Type a whole number of plants, or leave it empty.' } : {}),
    ...(percent === undefined
      ? { viabilityThreshold: 'Type a number from 5 to 100, or leave it empty.' }
      : {}),
    ...(days === undefined ? { daysToSeed: 'Type whole days from 20 to 366, or leave it empty.' } : {}),
  }
  if (plants === undefined || percent === undefined || days === undefined) return { read: null, problems }
  return {
    read: {
      plantsToKeep: plants,
      viabilityThreshold: percent === null ? null : percent / 100,
      daysToSeed: days,
      reason: typed.reason,
    },
    problems,
  }
}

/** Null for an empty text, undefined where it cannot be read. */
function optional(typed: string, read: (text: string) => number | null): number | null | undefined {
  return typed.trim() === '' ? null : (read(typed) ?? undefined)
}

function decimal(typed: string): number | null {
  const number = readNumber(typed)
  return number.kind === 'number' ? number.value : null
}

function between(value: number | null, least: number, most: number): number | null {
  return value !== null && value >= least && value <= most ? value : null
}
