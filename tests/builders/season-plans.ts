import type { IsolationMethod } from '../../db/domain/season-plan/isolation-method.ts'
import type { PlanCandidate, PlanChoice, PlanProblem, PlanSite } from '../../db/domain/season-plan/plan.ts'

/** A candidate that crosses with none and fits anywhere, with what a test wants otherwise. */
export function aCandidate(accessionId: number, more: Partial<PlanCandidate> = {}): PlanCandidate {
  return {
    accessionId,
    variety: `Variety ${accessionId}`,
    cropId: 'bean',
    group: `Group ${accessionId}`,
    isolation: 100,
    plants: 20,
    area: 2,
    worth: 1,
    daysToSeed: null,
    laterDays: null,
    pollination: 'insect',
    flowersNextSeason: false,
    ...more,
  }
}

/** A garden of 20 m² that takes anything, with what a test wants otherwise. */
export function aSite(siteId: number, east: number, more: Partial<PlanSite> = {}): PlanSite {
  return {
    siteId,
    name: `Garden ${siteId}`,
    position: { east, north: 0 },
    area: 20,
    mostVarieties: 5,
    takes: [],
    seasonDays: null,
    reliability: 0.9,
    neighbours: [],
    carried: { area: 0, varieties: 0 },
    flowering: [],
    ...more,
  }
}

export const at = (accessionId: number, siteId: number, way: IsolationMethod = 'open'): PlanChoice => ({
  accessionId,
  siteId,
  way,
})

/** A plan that somebody could meet, drawn from a random source of numbers from 0 to 1. */
export function drawnProblem(random: () => number, candidates: number, sites: number): PlanProblem {
  const whole = (below: number) => Math.floor(random() * below)
  const groups = Math.max(1, Math.ceil(candidates / 5))
  return {
    candidates: Array.from({ length: candidates }, (_, index) =>
      aCandidate(index + 1, {
        group: `Group ${whole(groups)}`,
        isolation: [3, 15, 100, 300, 800][whole(5)] ?? 100,
        area: 1 + whole(12),
        worth: 0.05 + Math.round(random() * 195) / 100,
        cropId: `crop-${whole(4)}`,
        plants: 6 + whole(60),
        laterDays: random() < 0.4 ? 28 : null,
        pollination: (['self', 'insect', 'wind'] as const)[whole(3)] ?? 'insect',
      }),
    ),
    sites: Array.from({ length: sites }, (_, index) =>
      aSite(index + 1, 0, {
        position: random() < 0.1 ? null : { east: whole(4_000), north: whole(4_000) },
        area: 8 + whole(40),
        mostVarieties: 1 + whole(8),
        takes: random() < 0.3 ? [`crop-${whole(4)}`, `crop-${whole(4)}`] : [],
        reliability: 0.4 + whole(7) / 10,
        neighbours:
          random() < 0.3 ? [{ crop: 'Bean', group: `Group ${whole(groups)}`, metres: whole(900) }] : [],
      }),
    ),
  }
}
