import { fold } from '../shared/fold.ts'
import { NearNames } from '../shared/near-names.ts'

/** What of a crop it is found by. */
export interface NamedCrop {
  readonly commonName: string
  /** Empty where nobody has said it. */
  readonly species: string
  /** What people call it, in any language. */
  readonly names: readonly string[]
  /** Its place among crops that share a name: the lowest is the commonest meaning. */
  readonly place: number
}

/** A crop that a text may mean, with the name that it was found by. */
export interface CropMatch<C> {
  readonly crop: C
  readonly name: string
}

interface Call<C> extends CropMatch<C> {
  readonly folded: string
}

/** Ends by which a name becomes its plural in English, German, French and Spanish. Common practice, no source. */
const PLURAL_ENDS: readonly string[] = ['s', 'es', 'n', 'en', 'e', 'x']
const SHORTEST_WORD = 3

/** Crops by all that people call them: exactly, by a few letters, or nearly so. */
export class CropNames<C extends NamedCrop> {
  readonly #calls: readonly Call<C>[]
  readonly #exact = new Map<string, Call<C>[]>()
  #near: NearNames<Call<C>> | null = null

  constructor(crops: readonly C[]) {
    this.#calls = crops.flatMap(callsOf)
    for (const call of this.#calls) {
      for (const form of formsOf(call.folded)) {
        const kept = this.#exact.get(form)
        if (kept === undefined) this.#exact.set(form, [call])
        else if (!kept.some(({ crop }) => crop === call.crop)) kept.push(call)
      }
    }
    for (const kept of this.#exact.values()) kept.sort((a, b) => a.crop.place - b.crop.place)
  }

  /** Every name, folded, singular and plural. */
  get words(): ReadonlySet<string> {
    return new Set(this.#exact.keys())
  }

  /** The crops of that very name, one or many of them, accents or not; the commonest meaning first. */
  called(text: string): readonly C[] {
    return this.#called(text).map(({ crop }) => crop)
  }

  /**
   * The crops that a text may mean, the likeliest first, each once: of that very name, then by letters of a name, then where
   * a name stands within the text, then a slip away.
   */
  find(text: string): readonly CropMatch<C>[] {
    const typed = fold(text)
    if (typed === '') return []
    const ranked = this.#calls
      .map((call) => ({ call, rank: rankOf(call.folded, typed) }))
      .filter(({ rank }) => rank < NO_FIT)
      .toSorted(
        (a, b) =>
          a.rank - b.rank ||
          closeness(a.call, a.rank) - closeness(b.call, b.rank) ||
          a.call.crop.place - b.call.crop.place,
      )
    const found = new Map<C, CropMatch<C>>()
    for (const { crop, name } of [
      ...this.#called(typed),
      ...ranked.map(({ call }) => call),
      ...this.#nearly(typed),
    ])
      if (!found.has(crop)) found.set(crop, { crop, name })
    return [...found.values()]
  }

  #called(text: string): readonly Call<C>[] {
    return this.#exact.get(fold(text)) ?? []
  }

  /** Names a slip away from the text, or from a word of it. */
  #nearly(typed: string): readonly Call<C>[] {
    if (this.#near === null) {
      this.#near = new NearNames()
      for (const call of this.#calls) this.#near.add(call.folded, call)
    }
    const near = this.#near
    const words = typed.split(' ').filter((word) => word.length >= SHORTEST_WORD)
    return [typed, ...words].flatMap((word) => formsBefore(word).flatMap((form) => near.near(form)))
  }
}

function callsOf<C extends NamedCrop>(crop: C): Call<C>[] {
  const names = [...crop.names, ...crop.commonName.split(/[/()]/), crop.commonName, crop.species]
  return names
    .map((name) => ({ crop, name: name.trim(), folded: fold(name) }))
    .filter(({ folded }) => folded.length >= SHORTEST_WORD)
}

function formsOf(folded: string): readonly string[] {
  return [folded, ...PLURAL_ENDS.map((end) => folded + end), folded.replace(/y$/, 'ies')]
}

/** What a word may be the plural of, itself first. */
function formsBefore(word: string): readonly string[] {
  return [word, ...PLURAL_ENDS.filter((end) => word.endsWith(end)).map((end) => word.slice(0, -end.length))]
}

const WITHIN = 4
const NO_FIT = 5

function rankOf(name: string, typed: string): number {
  if (` ${name} `.includes(` ${typed} `)) return 0
  if (name.startsWith(typed)) return 1
  if (name.includes(` ${typed}`)) return 2
  if (name.includes(typed)) return 3
  return formsOf(name).some((form) => ` ${typed} `.includes(` ${form} `)) ? WITHIN : NO_FIT
}

/** Of two names that fit alike: the one nearest in length; within a text the longest, since it says most. */
function closeness<C>({ folded }: Call<C>, rank: number): number {
  return rank === WITHIN ? -folded.length : folded.length
}
