import type { Handlers } from '../book/context.ts'
import { listGrowOuts, noteGrowOut } from './grow-outs.ts'
import { listSites, saveSite } from './growing-sites.ts'
import { getNeed } from './regrow-need.ts'
import { rankedNeeds } from './regrow-needs.ts'
import { getSeasonList, listSeasonLists, saveSeasonList } from './season-lists.ts'
import { checkPlan, latestPlan, makePlan, savePlan } from './season-plan.ts'

/** The operations that this room answers. */
export const regrowOperations = {
  'regeneration.list': rankedNeeds,
  'regeneration.get': getNeed,
  'site.list': listSites,
  'season-plan.preview': makePlan,
  'season-plan.check': checkPlan,
  'season-plan.get': latestPlan,
  'grow-out.list': listGrowOuts,
  'season-list.list': listSeasonLists,
  'season-list.get': getSeasonList,
  'season-list.create': saveSeasonList,
  'site.change': saveSite,
  'season-plan.create': savePlan,
  'grow-out.record': noteGrowOut,
} satisfies Partial<Handlers>
