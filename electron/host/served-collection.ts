import { contract, isOperationName, type Value } from '../../db/contract/contract.ts'
import type { Answer, UntoldProblem } from '../../db/contract/problem.ts'
import type { LanguageCode } from '../../db/messages/languages.ts'
import { answerCall, type Runner } from './answer-call.ts'
import { BackgroundWork } from './background-work.ts'
import { CollectionHolder } from './collection-holder.ts'
import { IdleGate } from './idle-gate.ts'
import { type Log, logFile } from './log.ts'
import { traceOf } from './problem-of.ts'
import { realBackend } from './real-backend.ts'
import type { WorkerStart } from './worker-messages.ts'

/** A backup while the app is open: soon after the start, and again in a long day. It waits until the window stands. */
const FIRST_BACKUP_MS = 5_000
const BACKUPS_EVERY_MS = 4 * 3_600_000

/** So many lots are forecast at a time: a call that comes meanwhile waits for some hundredths of a second. */
const LOTS_AT_A_TIME = 100

/** The collection of a folder with all that goes on beside its calls: forecasts, caches and backups. */
export class ServedCollection {
  readonly #start: WorkerStart
  readonly #log: Log
  readonly #holder: CollectionHolder
  readonly #idle = new IdleGate()
  readonly #caches: BackgroundWork
  readonly #forecasts: BackgroundWork
  readonly #backups: NodeJS.Timeout[] = []
  /** The last backup begun by itself; it ends with a line in the log where it failed or was given up. */
  #backup: Promise<void> = Promise.resolve()

  constructor(start: WorkerStart) {
    this.#start = start
    this.#log = logFile(start.folder, () => new Date())
    this.#holder = new CollectionHolder(start.folder, realBackend)
    const warm = () => this.#holder.warmCaches()
    this.#caches = new BackgroundWork('reading ahead', warm, this.#idle, this.#log)
    const refresh = () => refreshForecasts(this.#holder)
    const whenDone = () => this.#caches.wake()
    this.#forecasts = new BackgroundWork('forecast.refresh', refresh, this.#idle, this.#log, whenDone)
  }

  /** Opens what was asked for and begins the work beside. Answers why nothing could be opened, or null. */
  async open(): Promise<UntoldProblem | null> {
    const problem = await this.#holder.openFirst(this.#start.file)
    this.#caches.wake()
    this.#forecasts.wake()
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
  async call(name: unknown, input: unknown, language: LanguageCode | null): Promise<Answer<unknown>> {
    this.#idle.heard()
    const answer = await answerCall(this.#holder, name, input, this.#log, language)
    if (answer.ok && leavesForecasts(name)) this.#forecasts.wake()
    return answer
  }

  /** Closes the collection after the work under way. */
  async close(): Promise<void> {
    for (const timer of this.#backups) clearTimeout(timer)
    await this.#forecasts.stop()
    await this.#caches.stop()
    await this.#holder.close()
    await this.#backup
  }
}

/** Works out some of the forecasts that no longer hold, and tells how many are left to go on with: none while it is held. */
export async function refreshForecasts(runner: Pick<Runner, 'run'>): Promise<number> {
  const done = await runner.run('forecast.refresh', { limit: LOTS_AT_A_TIME })
  const { left, held } = done as Value<'forecast.refresh'>
  return held ? 0 : left
}

/** Whether a call may leave forecasts to be worked out; asked what is open, the holder may open it only then. */
function leavesForecasts(name: unknown): boolean {
  if (typeof name !== 'string' || !isOperationName(name)) return false
  return contract[name].access === 'writes' || name === 'forecast.pause' || name === 'collection.get'
}
