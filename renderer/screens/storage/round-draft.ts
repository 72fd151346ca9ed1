import type { RoundStop } from '../../../db/contract/care-operations.ts'
import type { CallInput } from '../../../db/contract/contract.ts'
import { typedNumber } from './typed-number.ts'

export type Inspection = Exclude<RoundStop['looks'][number]['look'], 'reading'>

/** What was ticked and typed of one look. */
export interface LookDraft {
  readonly outcome: '' | 'fine' | 'found'
  readonly note: string
  readonly lotIds: readonly number[]
  readonly quarantine: boolean
}

/** What was read off the instruments of a place, as typed. */
export interface ReadingDraft {
  readonly temperature: string
  readonly unit: 'C' | 'F'
  readonly humidity: string
  /** When it was typed first, HH:MM. */
  readonly time: string
}

interface StopDraft {
  readonly looks: Readonly<Partial<Record<Inspection, LookDraft>>>
  readonly reading: ReadingDraft
}

/** A round while it is walked; kept key by key. */
export interface RoundDraft {
  /** Names the intention to save, so that a save repeated after a crash acts once. */
  readonly key: string
  /** '' for today. */
  readonly on: string
  readonly walkedBy: string
  /** By the id of the place. */
  readonly stops: Readonly<Record<string, StopDraft>>
}

export type RoundStep =
  | { readonly kind: 'terms'; readonly change: Partial<Pick<RoundDraft, 'on' | 'walkedBy'>> }
  | {
      readonly kind: 'look'
      readonly placeId: number
      readonly look: Inspection
      readonly change: Partial<LookDraft>
    }
  | { readonly kind: 'reading'; readonly placeId: number; readonly change: Partial<ReadingDraft> }
  | { readonly kind: 'rest-is-fine'; readonly placeId: number; readonly looks: readonly Inspection[] }
  | { readonly kind: 'next'; readonly key: string }

const NOT_LOOKED: LookDraft = { outcome: '', note: '', lotIds: [], quarantine: false }
const NOT_READ: ReadingDraft = { temperature: '', unit: 'C', humidity: '', time: '' }
const NOT_WALKED: StopDraft = { looks: {}, reading: NOT_READ }

export function emptyRound(key: string): RoundDraft {
  return { key, on: '', walkedBy: '', stops: {} }
}

export function stopOf(draft: RoundDraft, placeId: number): StopDraft {
  return draft.stops[placeId] ?? NOT_WALKED
}

export function lookOf(draft: RoundDraft, placeId: number, look: Inspection): LookDraft {
  return stopOf(draft, placeId).looks[look] ?? NOT_LOOKED
}

export function stepRound(draft: RoundDraft, step: RoundStep): RoundDraft {
  switch (step.kind) {
    case 'terms':
      return { ...draft, ...step.change }
    case 'look': {
      const look = { ...lookOf(draft, step.placeId, step.look), ...step.change }
      return withLooks(draft, step.placeId, { [step.look]: look })
    }
    case 'reading': {
      const { reading } = stopOf(draft, step.placeId)
      return withStop(draft, step.placeId, { reading: { ...reading, ...step.change } })
    }
    case 'rest-is-fine': {
      const open = step.looks.filter((look) => lookOf(draft, step.placeId, look).outcome === '')
      const fine = open.map((look): [Inspection, LookDraft] => [look, { ...NOT_LOOKED, outcome: 'fine' }])
      return withLooks(draft, step.placeId, Object.fromEntries(fine))
    }
    case 'next':
      return emptyRound(step.key)
  }
}

function withStop(draft: RoundDraft, placeId: number, part: Partial<StopDraft>): RoundDraft {
  return { ...draft, stops: { ...draft.stops, [placeId]: { ...stopOf(draft, placeId), ...part } } }
}

function withLooks(draft: RoundDraft, placeId: number, looks: StopDraft['looks']): RoundDraft {
  return withStop(draft, placeId, { looks: { ...stopOf(draft, placeId).looks, ...looks } })
}

/** Whether nothing is ticked or typed yet. */
export function isBlankRound(draft: RoundDraft): boolean {
  return (
    draft.walkedBy.trim() === '' &&
    Object.values(draft.stops).every(
      ({ looks, reading }) =>
        Object.values(looks).every(({ outcome, note }) => outcome === '' && note === '') &&
        reading.temperature === '' &&
        reading.humidity === '',
    )
  )
}

/** The step of the first figure that cannot be read, or null. */
export function unreadFigure(draft: RoundDraft): string | null {
  for (const [placeId, { reading }] of Object.entries(draft.stops)) {
    const { temperature, humidity } = reading
    if (temperature.trim() !== '' && typedNumber(temperature) === null) return `${placeId}.temperature`
    if (humidity.trim() !== '' && typedNumber(humidity) === null) return `${placeId}.humidity`
    if (humidity.trim() !== '' && temperature.trim() === '') return `${placeId}.temperature`
  }
  return null
}

type Places = CallInput<'round.record'>['places']

type Check = NonNullable<Places[number]['checks']>[number]

function checkOf(look: Inspection, { outcome, note, lotIds, quarantine }: LookDraft): Check[] {
  if (outcome === '') return []
  if (outcome === 'fine') return [{ look, outcome }]
  return [{ look, outcome, note, lotIds: [...lotIds], quarantine: quarantine && lotIds.length > 0 }]
}

/** The places of which something was ticked or read, as they are written down. */
export function placesOf(draft: RoundDraft): Places {
  return Object.entries(draft.stops).flatMap(([placeId, { looks, reading }]) => {
    const checks = Object.entries(looks).flatMap(([look, said]) => checkOf(look as Inspection, said))
    const temperature = typedNumber(reading.temperature)
    const read =
      temperature === null
        ? null
        : { temperature, unit: reading.unit, humidity: typedNumber(reading.humidity), time: reading.time }
    return checks.length === 0 && read === null ? [] : [{ placeId: Number(placeId), checks, reading: read }]
  })
}

/** The step of the form that an input path of the written round stands for, or null. */
export function stepOfField(field: string, places: Places): string | null {
  const [, place, part, check, what] = /^places\.(\d+)\.(checks|reading)\.(\w+)(?:\.(\w+))?/.exec(field) ?? []
  const stop = places[Number(place)]
  if (stop === undefined || part === undefined) return null
  if (part === 'reading') return `${stop.placeId}.${check === 'humidity' ? 'humidity' : 'temperature'}`
  const look = stop.checks?.[Number(check)]?.look
  return look === undefined ? null : `${stop.placeId}.${look}${what === 'note' ? '.note' : ''}`
}
