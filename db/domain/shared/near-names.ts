import { fold } from './fold.ts'

/** Shorter names differ by a letter and mean something else: Ana and Ann, Rosa and Rose. */
const SHORTEST = 5

/**
 * Names that differ from a typed one by a single letter, by spaces, or by two letters that changed places.
 *
 * A digit is never a slip: 'Line 1' and 'Line 2' are two names. Common practice, no source.
 */
export class NearNames<T> {
  readonly #byKey = new Map<string, Set<T>>()

  /** Adds a name and what it stands for. */
  add(name: string, value: T): void {
    for (const key of keysOf(name)) {
      const kept = this.#byKey.get(key) ?? new Set<T>()
      this.#byKey.set(key, kept.add(value))
    }
  }

  /** What stands near a name, in the order added, each once. */
  near(name: string): T[] {
    return [...new Set(keysOf(name).flatMap((key) => [...(this.#byKey.get(key) ?? [])]))]
  }
}

/** Two names within one slip share one of these: the letters without spaces, and those with one letter left out. */
function keysOf(name: string): string[] {
  const letters = fold(name).replaceAll(' ', '')
  if (letters.length < SHORTEST) return letters === '' ? [] : [letters]
  const without = Array.from(letters, (letter, index) =>
    /\p{Number}/u.test(letter) ? letters : letters.slice(0, index) + letters.slice(index + 1),
  )
  return [...new Set([letters, ...without])]
}
