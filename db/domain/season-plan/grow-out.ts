import { type Message, message } from '../../messages/message.ts'
import type { IsoDate } from '../dates/iso-date.ts'
import { yearOf } from '../dates/iso-date.ts'

/** What is noted of a grow-out, in the order in which it happens; the last can come at any time. */
export const GROW_OUT_NOTES = [
  'sown',
  'emerged',
  'roots-stored',
  'planted-out',
  'flowered',
  'saved-from',
  'failed',
] as const
export type GrowOutNoteKind = (typeof GROW_OUT_NOTES)[number]

export const GROW_OUT_STATES = [
  'planned',
  'seed-out',
  'growing',
  'failed',
  'brought-back',
  'not-heard-of',
] as const
export type GrowOutState = (typeof GROW_OUT_STATES)[number]

/** One dated note of a grow-out. */
export interface GrowOutNote {
  readonly kind: GrowOutNoteKind
  readonly on: IsoDate
  /** Plants (of stored roots, roots); null where nobody counted. */
  readonly plants: number | null
  readonly note: string
}

/** What is known of one accession grown in one garden in one season. */
export interface GrowOut {
  /** The year of its sowing. */
  readonly season: number
  readonly biennial: boolean
  readonly seedOut: boolean
  readonly broughtBack: boolean
  readonly notes: readonly GrowOutNote[]
}

/** The steps that only a plant of two seasons takes: its roots are lifted, stored and planted again. */
const OF_TWO_SEASONS: readonly GrowOutNoteKind[] = ['roots-stored', 'planted-out']

/** The year in which seed of a grow-out is harvested: the second for what takes two seasons. */
export function harvestSeason({ season, biennial }: Pick<GrowOut, 'season' | 'biennial'>): number {
  return biennial ? season + 1 : season
}

/**
 * How a grow-out stands on a day. Seed that came back outweighs a noted failure; what was begun and of which nothing came
 * by the end of its harvest year was not heard of.
 */
export function growOutState(growOut: GrowOut, today: IsoDate): GrowOutState {
  if (growOut.broughtBack) return 'brought-back'
  if (growOut.notes.some(({ kind }) => kind === 'failed')) return 'failed'
  if (!isBegun(growOut)) return 'planned'
  if (yearOf(today) > harvestSeason(growOut)) return 'not-heard-of'
  return growOut.notes.length > 0 ? 'growing' : 'seed-out'
}

/** Whether seed went out for it or anything was noted of it. */
export function isBegun({ seedOut, notes }: GrowOut): boolean {
  return seedOut || notes.length > 0
}

/** Whether its roots stand in a season that is planned anew: begun in the season before, and not over. */
export function isCarriedInto(season: number, growOut: GrowOut): boolean {
  const over = growOut.broughtBack || growOut.notes.some(({ kind }) => kind === 'failed')
  return growOut.biennial && growOut.season === season - 1 && isBegun(growOut) && !over
}

/** What can be noted next, in order: everything not noted yet that its crop goes through, until it failed; it did not where seed came back. */
export function notesToCome({ biennial, broughtBack, notes }: GrowOut): readonly GrowOutNoteKind[] {
  const noted = new Set(notes.map(({ kind }) => kind))
  if (noted.has('failed')) return []
  const fits = (kind: GrowOutNoteKind) =>
    OF_TWO_SEASONS.includes(kind) ? biennial : kind !== 'failed' || !broughtBack
  return GROW_OUT_NOTES.filter((kind) => !noted.has(kind) && fits(kind))
}

/** Why a note cannot be, in one sentence; null where it can. */
export function whyNotNoted(growOut: GrowOut, note: GrowOutNote): Message | null {
  const { notes, biennial } = growOut
  const failed = notes.find(({ kind }) => kind === 'failed')
  if (failed !== undefined) return message('season.noted-failed', { on: { day: failed.on } })
  const same = notes.find(({ kind }) => kind === note.kind)
  if (same !== undefined) return message('season.noted-already', { note: toldNote(same) })
  if (!biennial && OF_TWO_SEASONS.includes(note.kind)) {
    return message('season.no-roots')
  }
  if (note.kind === 'failed') return note.note === '' ? message('season.say-why-failed') : null
  if (note.kind === 'saved-from' && note.plants === null) {
    return message('season.type-saved-from')
  }
  const order = (kind: GrowOutNoteKind) => GROW_OUT_NOTES.indexOf(kind)
  const clash = notes.find((other) =>
    order(other.kind) < order(note.kind) ? other.on > note.on : other.on < note.on,
  )
  return clash === undefined ? null : message('season.day-unfit', { note: toldNote(clash) })
}

/** One note: 'emerged 2 May 2026, 24 plants (patchy)'. */
export function toldNote({ kind, on, plants, note }: GrowOutNote): Message {
  return message('season.note', {
    what: message(`season.noted.${kind}`),
    on: { day: on },
    counted: plants === null ? 'nothing' : OF_TWO_SEASONS.includes(kind) ? 'roots' : 'plants',
    plants: plants ?? 0,
    said: note === '' ? 'no' : 'yes',
    note,
  })
}

/** Where it is grown and what was noted, for a list: 'at Mill field: sown 20 Apr 2026 and failed 3 Jul 2026 (hail)'. */
export function toldGrowOut(garden: string, { notes }: Pick<GrowOut, 'notes'>): Message {
  return notes.length === 0
    ? message('season.grown-at', { garden })
    : message('season.grown-at-noted', { garden, notes: { list: notes.map(toldNote) } })
}
