/** Longer than any reader, or busy machine, takes from one letter of a label to the next. */
const LETTER_MS = 150
let lettersUntil = Number.NEGATIVE_INFINITY

/** Tells that a letter fell just now: it may be one of a label that is being read. */
export function tellLetter(): void {
  lettersUntil = performance.now() + LETTER_MS
}

/** Tells that a label was read to its end. */
export function lettersEnd(): void {
  lettersUntil = Number.NEGATIVE_INFINITY
}

/** Waits while letters fall, so that the focus never moves under the hand or in the middle of a label. */
export async function whenLettersRest(): Promise<void> {
  for (let left = lettersUntil - performance.now(); left > 0; left = lettersUntil - performance.now())
    await new Promise((resolve) => setTimeout(resolve, left))
}
