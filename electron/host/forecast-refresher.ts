import type { Runner } from './answer-call.ts'
import type { IdleGate } from './idle-gate.ts'
import type { Log } from './log.ts'
import { problemOf, traceOf } from './problem-of.ts'

/** So many lots at a time: a call that comes meanwhile waits for some hundredths of a second. */
const LOTS_AT_A_TIME = 100

/** Works through the forecasts that no longer hold, a portion at a time, between the calls of those who wait. */
export class ForecastRefresher {
  readonly #runner: Runner
  readonly #idle: IdleGate
  readonly #log: Log
  readonly #whenDone: () => void
  #working: Promise<void> | null = null
  #wokenAgain = false
  #stopped = false

  constructor(runner: Runner, quiet: IdleGate, log: Log, whenDone: () => void) {
    this.#runner = runner
    this.#idle = quiet
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
      await this.#workThrough()
    }
    this.#whenDone()
  }

  async #workThrough(): Promise<void> {
    for (let left = 1; left > 0 && !this.#stopped; ) {
      await this.#idle.wait()
      try {
        const done = await this.#runner.run('forecast.refresh', { limit: LOTS_AT_A_TIME })
        const { left: more, held } = done as { left: number; held: boolean }
        if (held) return
        left = more
      } catch (thrown) {
        // Read-only, closed, or locked by another program: the next write tries again.
        if (problemOf(thrown).code === 'unexpected') this.#log(`forecast.refresh ${traceOf(thrown)}`)
        return
      }
    }
  }
}
