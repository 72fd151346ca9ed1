import type { CallInput, Value } from '../../../db/contract/contract.ts'
import { readNumber, spellDecimal } from '../../../db/domain/amounts/read-number.ts'
import { COUNTED_UNITS } from '../../../db/domain/crops/counted-unit.ts'
import { LIFE_CYCLES } from '../../../db/domain/crops/life-cycle.ts'
import { BREEDINGS } from '../../../db/domain/needs/population-goal.ts'
import { POLLINATIONS } from '../../../db/domain/season-plan/isolation-method.ts'
import { SEED_EXTRACTIONS } from '../../../db/domain/season-plan/seed-extraction.ts'
import { type Message, message } from '../../../db/messages/message.ts'
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
    keepsMonths: figure(crop.keepsMonths),
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
  readonly problems: Partial<Record<keyof T, Message>>
}

/** Reads a text as a figure within what is possible; undefined where it is none. */
interface Figure {
  readonly read: (typed: string) => number | undefined
  /** Said at the field where it cannot be read. */
  readonly problem: Message
}

function whole(least: number, most: number, problem: Message): Figure {
  return { read: (typed) => between(wholeNumber(typed), least, most), problem }
}

/** 9.993 may be meant both ways only where thousands are possible. */
function decimal(least: number, most: number, problem: Message): Figure {
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

const METRES = decimal(1, 10_000, message('settings.type-metres-or-empty', { least: 1, most: 10_000 }))

/** What a crop may be given in figures. */
const FIGURES = {
  packetSeeds: whole(1, 100_000, message('settings.type-seeds')),
  hundredSeedWeightG: decimal(0.0001, 10_000, message('settings.type-grams', { example: 0.04 })),
  keepsMonths: whole(1, 24, message('settings.type-number-or-empty', { least: 1, most: 24 })),
  isolationHomeM: METRES,
  isolationStrictM: METRES,
  laterSowingDays: whole(7, 120, message('settings.type-days-or-empty', { least: 7, most: 120 })),
  bedArea: decimal(0.001, 100, message('settings.type-square-metres', { example: 0.25 })),
  ke: decimal(1, 20, message('settings.type-constant', { least: 1, most: 20, example: '8.5' })),
  cw: decimal(1, 15, message('settings.type-constant', { least: 1, most: 15, example: '4.8' })),
  ch: decimal(0, 0.2, message('settings.type-constant', { least: 0, most: 0.2, example: '0.0329' })),
  cq: decimal(
    0.00001,
    0.01,
    message('settings.type-constant-cq', { least: '0.00001', most: '0.01', example: '0.000478' }),
  ),
  plantsToKeep: whole(1, 10_000, message('settings.type-plants')),
  viabilityThreshold: decimal(5, 100, message('settings.type-number-or-empty', { least: 5, most: 100 })),
  daysToSeed: whole(20, 366, message('settings.type-days-or-empty', { least: 20, most: 366 })),
} as const satisfies Readonly<Record<string, Figure>>
type FigureField = keyof typeof FIGURES

/** Reads some fields of figures: null where a field is empty, a problem where it cannot be read. */
function figuresOf<F extends FigureField>(typed: Readonly<Record<F, string>>, fields: readonly F[]) {
  const read = {} as Record<F, number | null>
  const problems: Partial<Record<F, Message>> = {}
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
    'keepsMonths',
    'isolationHomeM',
    'isolationStrictM',
    'laterSowingDays',
    'bedArea',
    ...CONSTANTS,
  ])
  const { ke, cw, ch, cq, ...figures } = read
  const missing = CONSTANTS.filter((one) => typed[one].trim() === '')
  const problems = {
    ...(typed.name.trim() === '' ? { name: message('settings.type-crop-name') } : {}),
    ...(missing.length === CONSTANTS.length
      ? {}
      : Object.fromEntries(missing.map((one) => [one, message('settings.four-together')]))),
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
