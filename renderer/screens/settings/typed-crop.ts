import type { CallInput, Value } from '../../../db/contract/contract.ts'
import { readNumber, spellDecimal } from '../../../db/domain/amounts/read-number.ts'
import { COUNTED_UNITS } from '../../../db/domain/crops/counted-unit.ts'
import { LIFE_CYCLES } from '../../../db/domain/crops/life-cycle.ts'
import { BREEDINGS } from '../../../db/domain/needs/population-goal.ts'
import { POLLINATIONS } from '../../../db/domain/season-plan/isolation-method.ts'
import { SEED_EXTRACTIONS } from '../../../db/domain/season-plan/seed-extraction.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'

type Crop = Value<'crop.get'>
type Correction = Required<CallInput<'crop.change'>['correction']>

/** The constants of the viability equation, which are known together or not at all. */
const CONSTANTS = ['ke', 'cw', 'ch', 'cq'] as const
type Constant = (typeof CONSTANTS)[number]

/** What of a crop is one of a few. */
export const CROP_CHOICES = {
  countedUnit: COUNTED_UNITS,
  matingSystem: BREEDINGS,
  pollination: POLLINATIONS,
  lifeCycle: LIFE_CYCLES,
  seedExtraction: SEED_EXTRACTIONS,
} as const
export type ChoiceField = keyof typeof CROP_CHOICES
/** As chosen; empty: not known. */
export type Choice<F extends ChoiceField> = (typeof CROP_CHOICES)[F][number] | ''

/** What is said of a crop of the keeper's own, as typed or chosen; empty: not known. */
export type TypedCrop = {
  readonly [F in Exclude<keyof Correction, 'viabilityConstants'> | Constant]: F extends ChoiceField
    ? Choice<F>
    : string
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
  const constants = crop.viabilityConstants
  return {
    name: crop.commonName,
    species: crop.species,
    family: crop.family,
    packetSeeds: figure(crop.packetSeeds),
    hundredSeedWeightG: figure(crop.hundredSeedWeightG),
    countedUnit: chosen('countedUnit', crop.countedUnit.one),
    matingSystem: chosen('matingSystem', crop.matingSystem),
    pollination: chosen('pollination', crop.pollination),
    lifeCycle: chosen('lifeCycle', crop.lifeCycle),
    isolationHomeM: figure(crop.isolationHomeM),
    isolationStrictM: figure(crop.isolationStrictM),
    laterSowingDays: figure(crop.laterSowingDays),
    bedArea: figure(crop.bedArea),
    seedExtraction: chosen('seedExtraction', crop.seedExtraction),
    ke: figure(constants?.ke ?? null),
    cw: figure(constants?.cw ?? null),
    ch: figure(constants?.ch ?? null),
    cq: figure(constants?.cq ?? null),
  }
}

function chosen<F extends ChoiceField>(field: F, said: string | null): Choice<F> {
  const choices: readonly Choice<F>[] = CROP_CHOICES[field]
  return choices.find((choice) => choice === said) ?? ''
}

function figure(value: number | null): string {
  return value === null ? '' : spellDecimal(value)
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

/** Reads a text as a figure within what is possible; undefined where it is none. */
interface Figure {
  readonly read: (typed: string) => number | undefined
  /** Said at the field where it cannot be read. */
  readonly problem: string
}

function whole(least: number, most: number, problem: string): Figure {
  return { read: (typed) => between(wholeNumber(typed), least, most), problem }
}

/** 9.993 may be meant both ways only where thousands are possible. */
function decimal(least: number, most: number, problem: string): Figure {
  const read = (typed: string) => {
    const number = readNumber(typed)
    if (number.kind === 'ask') return number.grouped > most ? between(number.decimal, least, most) : undefined
    return number.kind === 'number' ? between(number.value, least, most) : undefined
  }
  return { read, problem }
}

function between(value: number | null, least: number, most: number): number | undefined {
  return value !== null && value >= least && value <= most ? value : undefined
}

const METRES = decimal(1, 10_000, 'Type metres from 1 to 10,000, or leave it empty.')

/** What a crop may be given in figures. */
const FIGURES = {
  packetSeeds: whole(1, 100_000, 'Type a whole number of seeds, or leave it empty.'),
  hundredSeedWeightG: decimal(
    0.0001,
    10_000,
    'Type grams, as 0.04, or leave it empty where nobody weighed any.',
  ),
  isolationHomeM: METRES,
  isolationStrictM: METRES,
  laterSowingDays: whole(7, 120, 'Type whole days from 7 to 120, or leave it empty.'),
  bedArea: decimal(0.001, 100, 'Type square metres, as 0.25, or leave it empty.'),
  ke: decimal(1, 20, 'Type a number from 1 to 20, as 8.5, or leave all four empty.'),
  cw: decimal(1, 15, 'Type a number from 1 to 15, as 4.8, or leave all four empty.'),
  ch: decimal(0, 0.2, 'Type a number from 0 to 0.2, as 0.0329, or leave all four empty.'),
  cq: decimal(0.00001, 0.01, 'Type a number from 0.00001 to 0.01, as 0.000478, or leave all four empty.'),
  plantsToKeep: whole(1, 10_000, 'Type a whole number of plants, or leave it empty.'),
  viabilityThreshold: decimal(5, 100, 'Type a number from 5 to 100, or leave it empty.'),
  daysToSeed: whole(20, 366, 'Type whole days from 20 to 366, or leave it empty.'),
} as const satisfies Readonly<Record<string, Figure>>
type FigureField = keyof typeof FIGURES

/** Reads some fields of figures: null where a field is empty, a problem where it cannot be read. */
function figuresOf<F extends FigureField>(typed: Readonly<Record<F, string>>, fields: readonly F[]) {
  const read = {} as Record<F, number | null>
  const problems: Partial<Record<F, string>> = {}
  for (const field of fields) {
    const value = typed[field].trim() === '' ? null : FIGURES[field].read(typed[field])
    if (value === undefined) problems[field] = FIGURES[field].problem
    read[field] = value ?? null
  }
  return { read, problems }
}

/** Reads what was typed of a crop, and says which field cannot be read and how to type it. */
export function correctionOf(typed: TypedCrop): ReadTyped<TypedCrop, Correction> {
  const { read, problems: misread } = figuresOf(typed, [
    'packetSeeds',
    'hundredSeedWeightG',
    'isolationHomeM',
    'isolationStrictM',
    'laterSowingDays',
    'bedArea',
    ...CONSTANTS,
  ])
  const { ke, cw, ch, cq, ...figures } = read
  const missing = CONSTANTS.filter((one) => typed[one].trim() === '')
  const problems = {
    ...(typed.name.trim() === '' ? { name: 'Type what people call it.' } : {}),
    ...(missing.length === CONSTANTS.length
      ? {}
      : Object.fromEntries(missing.map((one) => [one, 'The four belong together: type it too, or none.']))),
    ...misread,
  }
  if (Object.keys(problems).length > 0) return { read: null, problems }
  return {
    read: {
      ...figures,
      name: typed.name,
      species: typed.species.trim(),
      family: typed.family.trim(),
      countedUnit: typed.countedUnit || 'seed',
      matingSystem: typed.matingSystem || null,
      pollination: typed.pollination || null,
      lifeCycle: typed.lifeCycle || null,
      seedExtraction: typed.seedExtraction || null,
      viabilityConstants:
        ke === null || cw === null || ch === null || cq === null ? null : { ke, cw, ch, cq },
    },
    problems,
  }
}

/** Reads what is to be kept of a crop; the part that must sprout as a part of one. */
export function keepingOf(
  typed: TypedKeeping,
): ReadTyped<TypedKeeping, Pick<CallInput<'crop.change-policy'>, keyof TypedKeeping>> {
  const { read, problems } = figuresOf(
    { ...typed, viabilityThreshold: typed.viabilityThreshold.replace('%', '') },
    ['plantsToKeep', 'viabilityThreshold', 'daysToSeed'],
  )
  if (Object.keys(problems).length > 0) return { read: null, problems }
  const { viabilityThreshold: percent } = read
  return {
    read: { ...read, viabilityThreshold: percent === null ? null : percent / 100, reason: typed.reason },
    problems,
  }
}
