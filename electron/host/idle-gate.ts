import { setTimeout } from 'node:timers/promises'

/** So long after the last call somebody is taken to have stopped typing, milliseconds. */
const QUIET_MS = 150
/** At least so long whoever waits comes first, milliseconds. */
const BREATH_MS = 5
/** Longer than this work of the background does not wait, however busy the window is, milliseconds. */
const LONGEST_MS = 2_000

/** What tells the time, milliseconds, and lets it pass. */
interface Clock {
  readonly now: () => number
  readonly after: (milliseconds: number) => Promise<unknown>
}

/** Lets work of the background wait while somebody asks one thing after the other, as at each key of a search. */
export class IdleGate {
  #lastCall = Number.NEGATIVE_INFINITY
  readonly #clock: Clock

  constructor(clock: Clock = { now: () => performance.now(), after: setTimeout }) {
    this.#clock = clock
  }

  /** Notes a call of somebody who waits for its answer. */
  heard(): void {
    this.#lastCall = this.#clock.now()
  }

  /** Waits until nobody has asked anything for a moment, though never for long. */
  async wait(): Promise<void> {
    const { now, after } = this.#clock
    const begun = now()
    do await after(BREATH_MS)
    while (now() - this.#lastCall < QUIET_MS && now() - begun < LONGEST_MS)
  }
}
