import type { IdleGate } from './idle-gate.ts'
import type { Log } from './log.ts'
import { traceOf } from './problem-of.ts'

/** Computes what screens will ask of the whole collection, a portion at a time, between the calls of those who wait. */
export class CacheWarmer {
  readonly #portion: () => Promise<number>
  readonly #idle: IdleGate
  readonly #log: Log
  #working: Promise<void> | null = null
  #stopped = false

  /** Takes what computes a portion and tells how much is left. */
  constructor(portion: () => Promise<number>, quiet: IdleGate, log: Log) {
    this.#portion = portion
    this.#idle = quiet
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
      for (let left = 1; left > 0 && !this.#stopped; left = await this.#portion()) await this.#idle.wait()
    } catch (thrown) {
      // What was not computed ahead is computed when it is asked for.
      this.#log(`reading ahead ${traceOf(thrown)}`)
    }
  }
}
