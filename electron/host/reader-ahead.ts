import type { Log } from './log.ts'
import { traceOf } from './problem-of.ts'
import type { Quiet } from './quiet.ts'

/** Reckons what screens will ask of the whole collection, a portion at a time, between the calls of those who wait. */
export class ReaderAhead {
  readonly #portion: () => Promise<number>
  readonly #quiet: Quiet
  readonly #log: Log
  #working: Promise<void> | null = null
  #stopped = false

  /** Takes what reckons a portion and tells how much is left. */
  constructor(portion: () => Promise<number>, quiet: Quiet, log: Log) {
    this.#portion = portion
    this.#quiet = quiet
    this.#log = log
  }

  /** Begins, unless it is at work. */
  wake(): void {
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
    try {
      for (let left = 1; left > 0 && !this.#stopped; left = await this.#portion()) await this.#quiet.wait()
    } catch (thrown) {
      // What was not reckoned ahead is reckoned when it is asked for.
      this.#log(`reading ahead ${traceOf(thrown)}`)
    }
  }
}
