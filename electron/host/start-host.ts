import { extname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { Answer, UntoldProblem } from '../../db/contract/problem.ts'
import type { LanguageCode } from '../../db/messages/languages.ts'
import { problemOf, traceOf } from './problem-of.ts'
import type { FromWorker, ToWorker, WorkerStart } from './worker-messages.ts'

/** The host as a transport sees it. */
export interface Host {
  /** One call, one answer, told in a language; null: the library's. Rejects with HostStopped where nobody can tell whether the call acted. */
  call(name: unknown, input: unknown, language?: LanguageCode | null): Promise<Answer<unknown>>
  /** Why no collection could be opened, or null once one is. */
  readonly opened: Promise<UntoldProblem | null>
  /** Closes the collection after the work under way. */
  close(): Promise<void>
}

/** The collection's thread ended before it answered: ask again with the same key. */
export class HostStopped extends Error {
  constructor() {
    super('The thread that keeps the collection ended before it answered')
    this.name = 'HostStopped'
  }
}

/** The same ending as this file has: the thread's file lies beside it, in the sources and in the built app alike. */
const WORKER_FILE = new URL(`./collection-worker${extname(fileURLToPath(import.meta.url))}`, import.meta.url)

/** Starts the thread that owns the collection. A thread that breaks is started afresh by the next call. */
export function startHost(start: WorkerStart, workerFile: URL = WORKER_FILE): Host {
  return new CollectionThread(start, workerFile)
}

interface Waiting {
  readonly answer: (answer: Answer<unknown>) => void
  readonly stop: (stopped: HostStopped) => void
}

class CollectionThread implements Host {
  readonly opened: Promise<UntoldProblem | null>
  readonly #workerFile: URL
  readonly #waiting = new Map<number, Waiting>()
  #start: WorkerStart
  #tellOpened: (problem: UntoldProblem | null) => void = () => {}
  #worker: Worker | null
  #lastId = 0
  #closing = false

  constructor(start: WorkerStart, workerFile: URL) {
    this.#start = start
    this.#workerFile = workerFile
    this.opened = new Promise((resolve) => {
      this.#tellOpened = resolve
    })
    this.#worker = this.#begin()
  }

  call(name: unknown, input: unknown, language: LanguageCode | null = null): Promise<Answer<unknown>> {
    if (this.#closing) return Promise.reject(new HostStopped())
    this.#worker ??= this.#begin()
    const worker = this.#worker
    this.#lastId += 1
    const id = this.#lastId
    return new Promise((answer, stop) => {
      this.#waiting.set(id, { answer, stop })
      worker.postMessage({ kind: 'call', id, name, input, language } satisfies ToWorker)
    })
  }

  async close(): Promise<void> {
    this.#closing = true
    const worker = this.#worker
    if (worker === null) return
    const ended = new Promise((resolve) => worker.once('exit', resolve))
    worker.postMessage({ kind: 'close' } satisfies ToWorker)
    await ended
  }

  #begin(): Worker {
    const worker = new Worker(this.#workerFile, { workerData: this.#start, execArgv: [] })
    worker.on('message', (message: FromWorker) => this.#hear(message))
    worker.on('error', (thrown) => console.error(`The collection's thread broke: ${traceOf(thrown)}`))
    worker.on('exit', () => this.#ended())
    return worker
  }

  #hear(message: FromWorker): void {
    if (message.kind === 'opened') {
      // What is open is remembered in the folder from now on: a thread started afresh goes on with that.
      if (message.problem === null) this.#start = { ...this.#start, file: null }
      this.#tellOpened(message.problem)
      return
    }
    this.#waiting.get(message.id)?.answer(message.answer)
    this.#waiting.delete(message.id)
  }

  #ended(): void {
    this.#worker = null
    this.#tellOpened(problemOf(null))
    for (const { stop } of this.#waiting.values()) stop(new HostStopped())
    this.#waiting.clear()
  }
}
