import type { Settings } from '../../../db/contract/collection-operations.ts'
import { readNumber } from '../../../db/domain/amounts/read-number.ts'
import { readPattern } from '../../../db/domain/numbers/pattern.ts'

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
  readonly locale: string
  readonly massUnits: Settings['massUnits']
  readonly paper: Settings['paper']
}

export function typedFrom(settings: Settings): TypedSettings {
  return {
    ...settings,
    regrowingsKept: String(settings.regrowingsKept),
    emergence: String(Math.round(1_000 * settings.emergence) / 10),
    assurance: String(Math.round(1_000 * settings.assurance) / 10),
    viabilityThreshold: String(Math.round(1_000 * settings.viabilityThreshold) / 10),
    visitLimit: settings.visitLimit === null ? '' : String(settings.visitLimit),
  }
}

export interface ReadSettings {
  /** Null while something cannot be read. */
  readonly settings: Partial<Settings> | null
  readonly problems: Partial<Record<keyof TypedSettings, string>>
}

/** Reads what was typed, and says which field cannot be read and how to type it. */
export function settingsOf(typed: TypedSettings): ReadSettings {
  const regrowingsKept = between(typed.regrowingsKept, 1, 20)
  const emergence = between(typed.emergence, 5, 100)
  const assurance = between(typed.assurance, 50, 99)
  const viabilityThreshold = between(typed.viabilityThreshold, 5, 100)
  const visitLimit = typed.visitLimit.trim() === '' ? null : between(typed.visitLimit, 1, 100)
  const limitUnclear = typed.visitLimit.trim() !== '' && !Number.isInteger(visitLimit)
  const problems = {
    ...(regrowingsKept === null || !Number.isInteger(regrowingsKept)
      ? { regrowingsKept: 'Type a whole number from 1 to 20.' }
      : {}),
    ...(emergence === null ? { emergence: 'Type a number from 5 to 100.' } : {}),
    ...(assurance === null ? { assurance: 'Type a number from 50 to 99.' } : {}),
    ...(viabilityThreshold === null ? { viabilityThreshold: 'Type a number from 5 to 100.' } : {}),
    ...(limitUnclear ? { visitLimit: 'Type a whole number from 1 to 100, or leave it empty.' } : {}),
    ...(typed.libraryName.trim() === '' ? { libraryName: 'Give the library a name.' } : {}),
  }
  const readable =
    Object.keys(problems).length === 0 && readPattern(typed.accessionPattern).kind === 'pattern'
  if (
    !readable ||
    regrowingsKept === null ||
    emergence === null ||
    assurance === null ||
    viabilityThreshold === null
  ) {
    return { settings: null, problems }
  }
  const { libraryName, accessionPattern, locale, massUnits, paper, viabilityThresholdOf } = typed
  return {
    settings: {
      libraryName,
      accessionPattern: accessionPattern.trim(),
      locale,
      massUnits,
      paper,
      regrowingsKept,
      emergence: emergence / 100,
      assurance: assurance / 100,
      viabilityThreshold: viabilityThreshold / 100,
      viabilityThresholdOf,
      visitLimit,
    },
    problems,
  }
}

function between(typed: string, least: number, most: number): number | null {
  const read = readNumber(typed.replace('%', ''))
  return read.kind === 'number' && read.value >= least && read.value <= most ? read.value : null
}
