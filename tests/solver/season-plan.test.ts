import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { greedyPlan, possibleChoices } from '../../db/domain/season-plan/greedy.ts'
import { clashesOf, type PlanChoice, type PlanProblem, worthOf } from '../../db/domain/season-plan/plan.ts'
import { programmeOf, variablesOf } from '../../db/domain/season-plan/programme.ts'
import { solve } from '../../db/solver/solve.ts'
import { seeded } from '../bench/random.ts'
import { drawnProblem } from '../builders/season-plans.ts'
import { sized } from '../support/sized.ts'

async function solved(problem: PlanProblem, locked: readonly PlanChoice[] = [], seconds = 10, gap = 0) {
  const programme = programmeOf(problem, locked)
  const from = variablesOf(programme, greedyPlan(problem, locked))
  const solution = await solve({ text: programme.text, from, seconds, gap })
  const plan = solution.chosen.flatMap((name) => programme.choices.get(name) ?? [])
  return { plan, ...solution }
}

/** The best of every plan there is, one accession after the other. */
function bestByTrying(problem: PlanProblem): number {
  const choicesOf = Map.groupBy(possibleChoices(problem), ({ choice }) => choice.accessionId)
  const lists = [...choicesOf.values()].map((rows) => rows.map(({ choice }) => choice))
  const tryFrom = (index: number, plan: readonly PlanChoice[]): number => {
    const list = lists[index]
    if (list === undefined) return worthOf(problem, plan)
    return Math.max(
      tryFrom(index + 1, plan),
      ...list
        .map((choice) => [...plan, choice])
        .filter((more) => clashesOf(problem, more).length === 0)
        .map((more) => tryFrom(index + 1, more)),
    )
  }
  return tryFrom(0, [])
}

describe('the solver’s plan', () => {
  test.each(Array.from({ length: sized(2, 40) }, (_, index) => index + 1))(
    'small case %i: as good as the best of all plans, without clashes',
    async (seed) => {
      const problem = drawnProblem(seeded(seed), 5, 3)
      const { plan, worth } = await solved(problem)
      expect(clashesOf(problem, plan)).toEqual([])
      expect(worth).toBeCloseTo(bestByTrying(problem), 6)
      expect(worthOf(problem, plan)).toBeCloseTo(worth, 6)
    },
  )

  test('keeps locked choices and is never worse than greedy round the same ones', async () => {
    for (const seed of sized([31], [31, 32, 33])) {
      const problem = drawnProblem(seeded(seed), 20, 6)
      const locked = greedyPlan(problem, []).slice(-2)
      const { plan } = await solved(problem, locked, 20, 0.001)
      expect(plan).toEqual(expect.arrayContaining([...locked]))
      expect(clashesOf(problem, plan)).toEqual([])
      expect(worthOf(problem, plan)).toBeGreaterThanOrEqual(
        worthOf(problem, greedyPlan(problem, locked)) - 1e-6,
      )
    }
  })

  // How long it takes is for npm run bench:plan to say: this one may run beside anything.
  const [candidates, sites] = sized([40, 8], [150, 25])
  test(`${candidates} candidates on ${sites} sites: to a gap under 2 %, without clashes, not worse than greedy`, async () => {
    const problem = drawnProblem(seeded(2027), candidates, sites)
    const { plan, gap } = await solved(problem, [], 25, 0.015)
    expect(gap).toBeLessThan(0.02)
    expect(clashesOf(problem, plan)).toEqual([])
    expect(worthOf(problem, plan)).toBeGreaterThanOrEqual(worthOf(problem, greedyPlan(problem, [])) - 1e-6)
  })

  test('in no time at all it is as good as the plan it began with', async () => {
    const problem = drawnProblem(seeded(34), 150, 25)
    const { plan, found } = await solved(problem, [], 0)
    expect(found).toBe(true)
    expect(clashesOf(problem, plan)).toEqual([])
    expect(worthOf(problem, plan)).toBeGreaterThanOrEqual(worthOf(problem, greedyPlan(problem, [])) - 1e-6)
  })

  test('nothing to plan is a plan of nothing', async () => {
    expect(await solved({ candidates: [], sites: [] })).toMatchObject({ plan: [], worth: 0 })
  })
})

/** GLPK's glpsol, an independent solver, reads the same text: apt-get install glpk-utils. */
const hasGlpsol = spawnSync('glpsol', ['--version']).status === 0
if (!hasGlpsol) {
  console.log(
    "glpsol is not on this machine, so the season's plan was not held against it: apt-get install glpk-utils",
  )
} else {
  describe('an independent solver on the same model', () => {
    test.each(sized([41], [41, 42, 43]))('comes to the same worth, case %i', async (seed) => {
      const problem = drawnProblem(seeded(seed), 16, 5)
      const { text } = programmeOf(problem, [])
      const folder = mkdtempSync(join(tmpdir(), 'drawer-glpsol-'))
      try {
        const [model, answer] = [join(folder, 'plan.lp'), join(folder, 'plan.txt')]
        writeFileSync(model, text)
        execFileSync('glpsol', ['--lp', model, '-o', answer, '--tmlim', '20', '--cuts'])
        const report = readFileSync(answer, 'utf8')
        expect(report).toMatch(/Status: +INTEGER OPTIMAL/)
        const theirs = Number(/Objective: +worth = ([\d.]+)/.exec(report)?.[1])
        const { worth } = await solved(problem)
        expect(worth).toBeCloseTo(theirs, 5)
      } finally {
        rmSync(folder, { recursive: true })
      }
    })
  })
}
