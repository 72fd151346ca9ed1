import type { IsolationMethod } from './isolation-method.ts'
import { metresApart, type PlanCandidate, type PlanSite } from './plan.ts'

/** Roots of last season at one site, which are planted again and set seed this season. */
export interface StandingRoots {
  readonly candidate: PlanCandidate
  readonly siteId: number
  readonly way: IsolationMethod
}

/** Sites with the roots of last season in them: the bed they take again, and their flowers as every site has them near. */
export function withRoots(sites: readonly PlanSite[], roots: readonly StandingRoots[]): readonly PlanSite[] {
  return sites.map((site) => {
    const here = roots.filter(({ siteId }) => siteId === site.siteId)
    return {
      ...site,
      carried: {
        area: here.reduce((sum, { candidate }) => sum + candidate.area, 0),
        varieties: here.length,
      },
      flowering: roots.flatMap(({ candidate, siteId, way }) => {
        const at = sites.find((one) => one.siteId === siteId)
        if (at === undefined || way === 'covered') return []
        const { variety, group, isolation } = candidate
        return [{ variety, group, isolation, metres: metresApart(at, site) }]
      }),
    }
  })
}
