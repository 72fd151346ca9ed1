import { setTimeout as after } from 'node:timers/promises'

/** So long after the last call somebody is taken to have stopped typing, milliseconds. */
const QUIET_MS = 150
/** At least so long whoever waits comes first, milliseconds. */
const BREATH_MS = 5
/** Longer than this work of the background does not wait, however busy the window is, milliseconds. */
const LONGEST_MS = 2_000

/** Lets work of the background wait while somebody asks one thing after the other, as at each key of a search. */
export class Quiet {
  #lastCall = Number.NEGATIVE_INFINITY

  /** Notes a call of somebody who waits for its answer. */
  heard(): void {
    this.#lastCall = performance.now()
  }

  /** Waits until nobody has asked anything for a moment, though never for long. */
  async wait(): Promise<void> {
    const begun = performance.now()
    do await after(BREATH_MS)
    while (performance.now() - this.#lastCall < QUIET_MS && performance.now() - begun < LONGEST_MS)
  }
}
