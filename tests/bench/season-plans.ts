import { greedyPlan } from '../../db/domain/season-plan/greedy.ts'
import { worthOf } from '../../db/domain/season-plan/plan.ts'
import { programmeOf, variablesOf } from '../../db/domain/season-plan/programme.ts'
import { solve } from '../../db/solver/solve.ts'
import { drawnProblem } from '../builders/season-plans.ts'
import { seeded } from './random.ts'

// npm run bench:plan: season plans of 150 accessions on 25 sites, greedy beside the solver's, ten seconds at most.

const SECONDS = 10
const GAP = 0.01

for (const seed of [1, 2, 3, 4, 5]) {
  const problem = drawnProblem(seeded(seed), 150, 25)
  const greedyFrom = performance.now()
  const plan = greedyPlan(problem, [])
  const greedyMs = performance.now() - greedyFrom
  const greedy = worthOf(problem, plan)
  const from = performance.now()
  const programme = programmeOf(problem, [])
  const { worth, gap } = await solve({
    text: programme.text,
    from: variablesOf(programme, plan),
    seconds: SECONDS,
    gap: GAP,
  })
  const seconds = (performance.now() - from) / 1_000
  console.log(
    `plan ${seed}: greedy ${greedy.toFixed(2)} in ${greedyMs.toFixed(0)} ms, solver ${worth.toFixed(2)} in ${seconds.toFixed(1)} s, gap ${(100 * gap).toFixed(2)} %, ${(100 * (worth / greedy - 1)).toFixed(1)} % better`,
  )
}
