import { parentPort, workerData } from 'node:worker_threads'
import loader from 'highs'
import type { Solution, SolveOrder } from './solve.ts'

// A thread of its own for one programme: the solver does not let go of its thread until it is done or out of time.
const order = workerData as SolveOrder
// Its types describe the other of its two builds, in which the loader lies one step deeper.
const load = loader as unknown as typeof loader.default
const highs = await load()
const solution = highs.withModel({ format: 'lp', data: order.text }, (model): Solution => {
  model.options.set({ output_flag: false, time_limit: order.seconds, mip_rel_gap: order.gap })
  const atOne = new Set(order.from)
  const columns = model.getDimensions().numCols
  model.setSolution({
    colValue: Float64Array.from({ length: columns }, (_, index) =>
      atOne.has(model.getColName(index)) ? 1 : 0,
    ),
  })
  model.run()
  const values = model.getSolution().colValue
  const chosen = Array.from(values).flatMap((value, index) => (value > 0.5 ? [model.getColName(index)] : []))
  return {
    chosen,
    worth: model.getObjectiveValue(),
    gap: Number(model.info.get('mip_gap')),
    found: Number(model.info.get('primal_solution_status')) === 2,
  }
})
parentPort?.postMessage(solution)
