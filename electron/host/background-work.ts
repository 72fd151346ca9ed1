import type { IdleGate } from './idle-gate.ts'
import type { Log } from './log.ts'
import { problemOf, traceOf } from './problem-of.ts'

/** Works through what is left to be computed, a portion at a time, between the calls of those who wait. */
export class BackgroundWork {
  readonly #name: string
  readonly #portion: () => Promise<number>
  readonly #idle: IdleGate
  readonly #log: Log
  readonly #whenDone: () => void
  #working: Promise<void> | null = null
  #wokenAgain = false
  #stopped = false

  /** Takes what the log calls it, what computes a portion and tells how much is left, and what is told when none is. */
  constructor(
    name: string,
    portion: () => Promise<number>,
    idle: IdleGate,
    log: Log,
    whenDone: () => void = () => {},
  ) {
    this.#name = name
    this.#portion = portion
    this.#idle = idle
    this.#log = log
    this.#whenDone = whenDone
  }

  /** Begins, unless it is at work: something was written, or a collection was opened. */
  wake(): void {
    this.#wokenAgain = true
    if (this.#stopped || this.#working !== null) return
    this.#working = this.#work().finally(() => {
      this.#working = null
    })
  }

  /** Ends after the portion at hand. */
  async stop(): Promise<void> {
    this.#stopped = true
    await this.#working
  }

  async #work(): Promise<void> {
    while (this.#wokenAgain && !this.#stopped) {
      this.#wokenAgain = false
      try {
        for (let left = 1; left > 0 && !this.#stopped; left = await this.#portion()) await this.#idle.wait()
      } catch (thrown) {
        // Read-only, closed, or locked by another program: whoever wakes it next has it tried again.
        if (problemOf(thrown).code === 'unexpected') this.#log(`${this.#name} ${traceOf(thrown)}`)
      }
    }
    this.#whenDone()
  }
}
