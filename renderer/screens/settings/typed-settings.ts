import type { Settings } from '../../../db/contract/collection-operations.ts'
import { readPattern } from '../../../db/domain/numbers/pattern.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { numberWithin } from '../../shared/card-form/whole-number.ts'

/** The settings as typed: parts of one as so many of a hundred. */
export interface TypedSettings {
  readonly libraryName: string
  readonly accessionPattern: string
  readonly regrowingsKept: string
  readonly emergence: string
  readonly assurance: string
  readonly viabilityThreshold: string
  readonly viabilityThresholdOf: Settings['viabilityThresholdOf']
  /** Empty: no limit. */
  readonly visitLimit: string
  readonly checkReturns: Settings['checkReturns']
  readonly dueDates: boolean
  readonly language: Settings['language']
  readonly locale: string
  readonly massUnits: Settings['massUnits']
  readonly paper: Settings['paper']
}

export function typedFrom(settings: Settings): TypedSettings {
  const { libraryName, accessionPattern, viabilityThresholdOf, language, locale, massUnits, paper } = settings
  const { checkReturns, dueDates } = settings
  return {
    ...{ libraryName, accessionPattern, viabilityThresholdOf, language, locale, massUnits, paper },
    ...{ checkReturns, dueDates },
    regrowingsKept: String(settings.regrowingsKept),
    emergence: String(Math.round(1_000 * settings.emergence) / 10),
    assurance: String(Math.round(1_000 * settings.assurance) / 10),
    viabilityThreshold: String(Math.round(1_000 * settings.viabilityThreshold) / 10),
    visitLimit: settings.visitLimit === null ? '' : String(settings.visitLimit),
  }
}

/** The settings that can be typed so that they cannot be read. */
export type CheckedSetting = Exclude<
  keyof TypedSettings,
  'viabilityThresholdOf' | 'checkReturns' | 'dueDates' | 'language' | 'locale' | 'massUnits' | 'paper'
>

export interface ReadSettings {
  /** Null while something cannot be read. */
  readonly settings: Partial<Settings> | null
  readonly problems: Readonly<Partial<Record<CheckedSetting, Message>>>
}

/** Reads what was typed, and says which field cannot be read and how to type it. */
export function settingsOf(typed: TypedSettings): ReadSettings {
  const pattern = readPattern(typed.accessionPattern)
  const regrowingsKept = wholeWithin(typed.regrowingsKept, 20)
  const emergence = numberWithin(typed.emergence, 5, 100)
  const assurance = numberWithin(typed.assurance, 50, 99)
  const viabilityThreshold = numberWithin(typed.viabilityThreshold, 5, 100)
  const visitLimit = wholeWithin(typed.visitLimit, 100)
  const limitUnclear = visitLimit === null && typed.visitLimit.trim() !== ''
  const problems = {
    ...(typed.libraryName.trim() === '' ? { libraryName: message('settings.name-missing') } : {}),
    ...(pattern.kind === 'refused' ? { accessionPattern: pattern.because } : {}),
    ...(regrowingsKept === null
      ? { regrowingsKept: message('settings.type-whole', { least: 1, most: 20 }) }
      : {}),
    ...(emergence === null ? { emergence: message('settings.type-number', { least: 5, most: 100 }) } : {}),
    ...(assurance === null ? { assurance: message('settings.type-number', { least: 50, most: 99 }) } : {}),
    ...(viabilityThreshold === null
      ? { viabilityThreshold: message('settings.type-number', { least: 5, most: 100 }) }
      : {}),
    ...(limitUnclear ? { visitLimit: message('settings.type-whole-or-empty', { least: 1, most: 100 }) } : {}),
  }
  if (
    Object.keys(problems).length > 0 ||
    regrowingsKept === null ||
    emergence === null ||
    assurance === null ||
    viabilityThreshold === null
  )
    return { settings: null, problems }
  const settings = {
    ...typed,
    accessionPattern: typed.accessionPattern.trim(),
    regrowingsKept,
    emergence: emergence / 100,
    assurance: assurance / 100,
    viabilityThreshold: viabilityThreshold / 100,
    visitLimit,
  }
  return { settings, problems }
}

function wholeWithin(typed: string, most: number): number | null {
  const read = numberWithin(typed, 1, most)
  return Number.isInteger(read) ? read : null
}
