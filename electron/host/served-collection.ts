import { contract, isOperationName } from '../../db/contract/contract.ts'
import type { Answer, Problem } from '../../db/contract/problem.ts'
import { answerCall } from './answer-call.ts'
import { CacheWarmer } from './cache-warmer.ts'
import { CollectionHolder } from './collection-holder.ts'
import { ForecastRefresher } from './forecast-refresher.ts'
import { IdleGate } from './idle-gate.ts'
import { type Log, logFile } from './log.ts'
import { traceOf } from './problem-of.ts'
import { realBackend } from './real-backend.ts'
import type { WorkerStart } from './worker-messages.ts'

/** A backup while the app is open: soon after the start, and again in a long day. It waits until the window stands. */
const FIRST_BACKUP_MS = 5_000
const BACKUPS_EVERY_MS = 4 * 3_600_000

/** The collection of a folder with all that goes on beside its calls: forecasts, caches and backups. */
export class ServedCollection {
  readonly #start: WorkerStart
  readonly #log: Log
  readonly #holder: CollectionHolder
  readonly #idle = new IdleGate()
  readonly #ahead: CacheWarmer
  readonly #refresher: ForecastRefresher
  readonly #backups: NodeJS.Timeout[] = []
  /** The last backup begun by itself; it ends with a line in the log where it failed or was given up. */
  #backup: Promise<void> = Promise.resolve()

  constructor(start: WorkerStart) {
    this.#start = start
    this.#log = logFile(start.folder, () => new Date())
    this.#holder = new CollectionHolder(start.folder, realBackend)
    this.#ahead = new CacheWarmer(() => this.#holder.warmCaches(), this.#idle, this.#log)
    this.#refresher = new ForecastRefresher(this.#holder, this.#idle, this.#log, () => this.#ahead.wake())
  }

  /** Opens what was asked for and begins the work beside. Answers why nothing could be opened, or null. */
  async open(): Promise<Problem | null> {
    const problem = await this.#holder.openFirst(this.#start.file)
    this.#ahead.wake()
    this.#refresher.wake()
    const backUp = () => {
      this.#backup = this.#holder
        .backUpByItself()
        .catch((thrown: unknown) => this.#log(`backup ${traceOf(thrown)}`))
    }
    this.#backups.push(
      setTimeout(backUp, FIRST_BACKUP_MS).unref(),
      setInterval(backUp, BACKUPS_EVERY_MS).unref(),
    )
    return problem
  }

  /** One call, one answer; never rejects. */
  async call(name: unknown, input: unknown): Promise<Answer<unknown>> {
    this.#idle.heard()
    const answer = await answerCall(this.#holder, name, input, this.#log)
    if (answer.ok && leavesForecasts(name)) this.#refresher.wake()
    return answer
  }

  /** Closes the collection after the work under way. */
  async close(): Promise<void> {
    for (const timer of this.#backups) clearTimeout(timer)
    await this.#refresher.stop()
    await this.#ahead.stop()
    await this.#holder.close()
    await this.#backup
  }
}

/** Whether a call may leave forecasts to be worked out; asked what is open, the holder may open it only then. */
function leavesForecasts(name: unknown): boolean {
  if (typeof name !== 'string' || !isOperationName(name)) return false
  return contract[name].access === 'writes' || name === 'forecast.pause' || name === 'collection.get'
}
