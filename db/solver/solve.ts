import { extname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'

/** A programme to be solved, from what, for how long at most, and how near to the best is near enough. */
export interface SolveOrder {
  readonly text: string
  /** Variables at 1 of a solution that is known, so that what is found is never worse; empty: nothing but 0. */
  readonly from: readonly string[]
  readonly seconds: number
  /** Relative gap, 0.01 for one part in a hundred. */
  readonly gap: number
}

/** What the solver found: names of the variables at 1, what they are worth, and how far from the best at most. */
export interface Solution {
  readonly chosen: readonly string[]
  readonly worth: number
  readonly gap: number
  readonly found: boolean
}

/** The same ending as this file has: the thread's file lies beside it, in the sources and in the built app alike. */
const WORKER_FILE = new URL(`./solve-worker${extname(fileURLToPath(import.meta.url))}`, import.meta.url)

/** Solves an integer programme with HiGHS in a thread of its own. Rejects where the thread breaks. */
export function solve(order: SolveOrder): Promise<Solution> {
  return new Promise((answer, stop) => {
    const worker = new Worker(WORKER_FILE, { workerData: order, execArgv: [] })
    worker.once('message', (solution: Solution) => {
      answer(solution)
      void worker.terminate()
    })
    worker.once('error', stop)
    worker.once('exit', (code) =>
      stop(new Error(`The solver's thread ended with ${code} before it answered`)),
    )
  })
}
