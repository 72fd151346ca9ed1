import { desc, eq, sql } from 'drizzle-orm'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { GrowingSite, PlanLine } from '../../contract/regeneration-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { isBiennial } from '../../domain/crops/life-cycle.ts'
import { isPiece } from '../../domain/crops/pieces.ts'
import { addDays } from '../../domain/dates/day-arithmetic.ts'
import { isKept } from '../../domain/keeping/keeping.ts'
import { breedingOf } from '../../domain/needs/population-goal.ts'
import { crossingGroup, toldGroup } from '../../domain/season-plan/crossing.ts'
import { greedyPlan } from '../../domain/season-plan/greedy.ts'
import { growOutState, isCarriedInto, toldGrowOut } from '../../domain/season-plan/grow-out.ts'
import { toldApartInTime } from '../../domain/season-plan/in-time.ts'
import {
  isolationDistance,
  unknownToPlan,
  whyIsolation,
} from '../../domain/season-plan/isolation-distance.ts'
import { hoursOfIsolation, pollinationOf } from '../../domain/season-plan/isolation-method.ts'
import { whyLeftOut } from '../../domain/season-plan/left-out.ts'
import { type LotNotSown, whyNoSeed } from '../../domain/season-plan/no-seed.ts'
import {
  clashesOf,
  daysNeeded,
  type PlanCandidate,
  type PlanChoice,
  type PlanProblem,
  type PlanSite,
  PREPARED_DAYS,
  sownLaterBy,
  worthOf,
} from '../../domain/season-plan/plan.ts'
import { programmeOf, variablesOf } from '../../domain/season-plan/programme.ts'
import { toldShortSeason } from '../../domain/season-plan/season-length.ts'
import { bedFor } from '../../domain/season-plan/spacing.ts'
import { withRoots } from '../../domain/season-plan/standing-roots.ts'
import { worthOfGrowing } from '../../domain/season-plan/worth.ts'
import { type Message, message } from '../../messages/message.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { notUndone } from '../../queries/measurements.ts'
import { neighbourRows, planCrops } from '../../queries/plan-rows.ts'
import { growOut, seasonPlan, seasonPlanLine } from '../../schema/season-tables.ts'
import { solve } from '../../solver/solve.ts'
import type { Reading, Reads, Writes, Writing } from '../book/context.ts'
import { policyOf } from '../book/living-stock.ts'
import { settingsOf } from '../book/settings.ts'
import { growOutsSince } from './grow-outs.ts'
import { listSites } from './growing-sites.ts'
import { rankNeeds } from './regrow-needs.ts'
import { becameOf } from './season-lists.ts'
import { rescueOf, sowingOf } from './sowing-and-rescue.ts'
import { cropsByGroup, isolationSource } from './what-crosses.ts'

/** Near enough to the best plan to stop looking. */
const NEAR_ENOUGH = 0.01

interface Planning {
  readonly problem: PlanProblem
  readonly season: number
  /** Those that the library does not keep. */
  readonly notKept: ReadonlySet<number>
  readonly linesOf: (choices: readonly PlanChoice[]) => Untold<PlanLine>[]
}

/** Gathers gardens and the wanted accessions as a plan sees them. Refuses an accession that is not in the book. */
function gather(reading: Reading, accessionIds: readonly number[], ofSeason?: number): Planning {
  const wanted = new Set(accessionIds)
  const ranking = rankNeeds(reading)
  const season = ofSeason ?? ranking.season.year
  const carried = growOutsSince(reading, season - 1).filter(({ facts }) => isCarriedInto(season, facts))
  const ids = [...new Set([...wanted, ...carried.map(({ row }) => row.accessionId)])]
  const facts = new Map(ranking.ranked.map((need) => [need.accessionId, need]))
  const lotsOf = Map.groupBy(lotsOfAccessions(reading.sqlite, ids), (row) => row.accessionId)
  const cropOf = new Map(planCrops(reading.sqlite, ids).map((row) => [row.accessionId, row]))
  const { sites } = listSites(reading)
  const known = ids.map((accessionId) => {
    const need = facts.get(accessionId)
    const lots = lotsOf.get(accessionId)
    const first = lots?.[0]
    const ofCrop = cropOf.get(accessionId)
    if (need === undefined || lots === undefined || first === undefined || ofCrop === undefined) {
      return refuse('not-found', message('season.plan-accession-gone'), {
        field: 'accessionIds',
      })
    }
    const policy = policyOf(first, ranking.policy)
    const grade = first.ownGrade ?? ranking.policy.grade
    const breeding = breedingOf(first.matingSystem)
    const candidate: PlanCandidate = {
      accessionId,
      variety: first.variety,
      cropId: first.cropId,
      group: crossingGroup(ofCrop),
      isolation: isPiece(first.countedUnit) ? 0 : isolationDistance(ofCrop, breeding, grade),
      plants: policy.plants,
      area: bedFor(ofCrop.bedArea, policy.plants),
      worth: worthOfGrowing(need),
      daysToSeed: ofCrop.daysToSeed,
      laterDays: ofCrop.laterSowingDays,
      pollination: pollinationOf(ofCrop.pollination, breeding),
      flowersNextSeason: isBiennial(ofCrop.lifeCycle),
    }
    return {
      candidate,
      first,
      lots,
      policy,
      biennial: isBiennial(ofCrop.lifeCycle),
      unknown: isPiece(first.countedUnit) ? '' : unknownToPlan(ofCrop, breeding, grade),
      isolationWhy: isPiece(first.countedUnit)
        ? message('pieces.no-crossing')
        : whyIsolation(isolationSource(ofCrop, grade)),
    }
  })
  const candidates = known.map(({ candidate }) => candidate)
  const problem = {
    candidates: candidates.filter(({ accessionId }) => wanted.has(accessionId)),
    sites: withRoots(
      planSites(reading, sites),
      carried.flatMap(({ row }) => {
        const candidate = candidates.find(({ accessionId }) => accessionId === row.accessionId)
        return candidate === undefined ? [] : [{ candidate, siteId: row.siteId, way: row.way ?? 'open' }]
      }),
    ),
  }
  return {
    problem,
    season: ranking.season.year,
    notKept: new Set(
      known.filter(({ first }) => !isKept(first.policy)).map(({ first }) => first.accessionId),
    ),
    linesOf: lineMaker(reading, known, sites, problem, {
      season,
      since: addDays(ranking.season.sowing, -PREPARED_DAYS),
    }),
  }
}

interface Known {
  readonly candidate: PlanCandidate
  readonly first: LotRow
  readonly lots: readonly LotRow[]
  readonly policy: ReturnType<typeof policyOf>
  readonly biennial: boolean
  readonly unknown: Message | string
  readonly isolationWhy: Message
}

function lineMaker(
  reading: Reading,
  known: readonly Known[],
  sites: readonly GrowingSite[],
  problem: PlanProblem,
  { season, since }: { readonly season: number; readonly since: string },
) {
  const growOuts = growOutsSince(reading, season).filter(({ row }) => row.season === season)
  const byId = new Map(known.map((row) => [row.candidate.accessionId, row]))
  const cropsOf = cropsByGroup(reading)
  const find = (choice: PlanChoice) => {
    const row = byId.get(choice.accessionId)
    const site = sites.find(({ siteId }) => siteId === choice.siteId)
    return row === undefined || site === undefined
      ? refuse('not-found', message('season.plan-garden-gone'), { field: 'choices' })
      : { choice, row, site }
  }
  const lineOf = (
    { choice, row, site }: ReturnType<typeof find>,
    choices: readonly PlanChoice[],
  ): Untold<PlanLine> => {
    const { accessionId, siteId, way } = choice
    const { candidate, first, lots, policy, biennial, unknown, isolationWhy } = row
    const grown = growOuts.find(({ row: of }) => of.accessionId === accessionId && of.siteId === siteId)
    const unit = first.countedUnit
    const manner = settingsOf(reading)
    const sow = sowingOf(reading, lots, manner)
    const rescue = rescueOf(reading, lots, manner, sow)
    return {
      accessionId,
      accessionNumber: first.accessionNumber,
      variety: first.variety,
      crop: first.crop,
      siteId,
      site: site.name,
      growerId: site.growerId,
      grower: site.grower,
      way,
      pollination: candidate.pollination,
      hours: hoursOfIsolation(way, candidate.plants, candidate.pollination),
      laterDays: candidate.laterDays,
      apartInTime: toldApartInTime(problem, choices, choice),
      plants: policy.plants,
      areaM2: candidate.area,
      group: toldGroup(candidate.group, cropsOf.get(candidate.group) ?? []),
      isolationM: candidate.isolation,
      isolationWhy,
      shortSeason: toldShortSeason(first.crop, daysNeeded(candidate, way), site, sownLaterBy(candidate, way)),
      biennial,
      unknown,
      growOutId: grown?.row.growOutId ?? null,
      seedOut: grown?.facts.seedOut ?? false,
      became: becameOf(reading, accessionId, since, unit),
      sow,
      noSeed: sow === null ? [...whyNoSeed(lots.map(lotNotSown), unit)] : [],
      rescue: { forKeeper: [...rescue.forKeeper], forGrower: [...rescue.forGrower] },
    }
  }
  return (choices: readonly PlanChoice[]) => choices.map(find).map((found) => lineOf(found, choices))
}

function lotNotSown(row: LotRow): LotNotSown {
  const { lotNumber, balanceCount: seeds, role, quarantineReason: quarantine } = row
  return { lotNumber, seeds, role, quarantine }
}

function planSites(reading: Reading, sites: readonly GrowingSite[]): PlanSite[] {
  const near = Map.groupBy(neighbourRows(reading.sqlite), ({ siteId }) => siteId)
  return sites.map((site) => ({
    siteId: site.siteId,
    name: site.name,
    position: site.position,
    area: site.areaM2,
    mostVarieties: site.mostVarieties,
    seasonDays: site.seasonDays,
    takes: site.takes,
    reliability: site.reliability,
    neighbours: (near.get(site.siteId) ?? []).map((neighbour) => ({
      crop: neighbour.crop,
      group: crossingGroup(neighbour),
      metres: neighbour.metres,
    })),
    carried: { area: 0, varieties: 0 },
    flowering: [],
  }))
}

export async function makePlan(
  reading: Reading,
  input: ParsedInput<'season-plan.preview'>,
): Promise<Result<'season-plan.preview'>> {
  const { locked } = input
  const planning = gather(reading, [...input.accessionIds, ...locked.map(({ accessionId }) => accessionId)])
  const { linesOf } = planning
  linesOf(locked)
  const isLocked = (id: number) => locked.some(({ accessionId }) => accessionId === id)
  const isProposed = ({ accessionId }: PlanCandidate) =>
    !planning.notKept.has(accessionId) || isLocked(accessionId)
  const problem = { ...planning.problem, candidates: planning.problem.candidates.filter(isProposed) }
  const clash = clashesOf(problem, locked)[0]
  if (clash !== undefined) {
    refuse('plan-clash', message('season.stay-clash', { clash: clash.sentence }), {
      field: 'locked',
      todo: message('season.stay-clash-todo'),
    })
  }
  const greedy = greedyPlan(problem, locked)
  const greedyWorth = worthOf(problem, greedy)
  const solved = input.seconds === 0 ? null : await solvedPlan(problem, locked, greedy, input.seconds)
  const better = solved !== null && worthOf(problem, solved.plan) >= greedyWorth - 1e-9
  const plan = better ? solved.plan : greedy
  const placed = new Set(plan.map(({ accessionId }) => accessionId))
  return {
    lines: linesOf(plan),
    by: better ? 'solver' : 'greedy',
    worth: worthOf(problem, plan),
    greedyWorth,
    gap: better ? solved.gap : null,
    left: planning.problem.candidates
      .filter(({ accessionId }) => !placed.has(accessionId))
      .map((candidate) => ({
        accessionId: candidate.accessionId,
        variety: candidate.variety,
        why: isProposed(candidate)
          ? whyLeftOut(problem, plan, candidate)
          : message('keeping.nothing-to-regrow'),
      })),
  }
}

/** The solver's plan, which begins with the greedy one, or null where what it found does not hold. */
async function solvedPlan(
  problem: PlanProblem,
  locked: readonly PlanChoice[],
  greedy: readonly PlanChoice[],
  seconds: number,
) {
  const programme = programmeOf(problem, locked)
  const { chosen, gap, found } = await solve({
    text: programme.text,
    from: variablesOf(programme, greedy),
    seconds,
    gap: NEAR_ENOUGH,
  })
  const plan = chosen.flatMap((name) => programme.choices.get(name) ?? [])
  return found && clashesOf(problem, plan).length === 0 ? { plan, gap } : null
}

export const checkPlan: Reads<'season-plan.check'> = (reading, input) => {
  const { problem, linesOf } = gather(
    reading,
    input.choices.map(({ accessionId }) => accessionId),
  )
  const lines = linesOf(input.choices)
  return {
    lines,
    clashes: clashesOf(problem, input.choices).map(({ kind, sentence, choices }) => ({
      kind,
      sentence,
      accessionIds: choices.map(({ accessionId }) => accessionId),
    })),
  }
}

export const savePlan: Writes<'season-plan.create'> = (writing, input) => {
  const { problem, linesOf, season } = gather(
    writing,
    input.choices.map(({ accessionId }) => accessionId),
  )
  linesOf(input.choices)
  const clash = clashesOf(problem, input.choices)[0]
  if (clash !== undefined) {
    refuse('plan-clash', clash.sentence, { field: 'choices', todo: message('season.clash-todo') })
  }
  refuseToLoseGrowOuts(writing, season, input.choices)
  const { id } = writing.db
    .insert(seasonPlan)
    .values({ season, onDate: writing.today, note: input.note, entryId: writing.entryId })
    .returning({ id: seasonPlan.id })
    .get()
  for (const choice of input.choices) {
    writing.db
      .insert(seasonPlanLine)
      .values({ planId: id, ...choice })
      .run()
    const { accessionId, siteId } = choice
    writing.db
      .insert(growOut)
      .values({ season, accessionId, siteId, entryId: writing.entryId })
      .onConflictDoNothing()
      .run()
  }
  const gardens = new Set(input.choices.map(({ siteId }) => siteId)).size
  const said = message('season.saved-plan', { year: String(season), count: input.choices.length, gardens })
  return { planId: id, said, undoable: true }
}

/** What is growing stays where it grows in every later plan of its season. */
function refuseToLoseGrowOuts(writing: Writing, season: number, choices: readonly PlanChoice[]): void {
  for (const { row, facts } of growOutsSince(writing, season)) {
    const state = growOutState(facts, writing.today)
    const isThere = choices.some(
      ({ accessionId, siteId }) => accessionId === row.accessionId && siteId === row.siteId,
    )
    if (row.season !== season || isThere || (state !== 'seed-out' && state !== 'growing')) continue
    refuse(
      'plan-loses-grow-out',
      message('season.loses', { variety: row.variety, where: toldGrowOut(row.site, facts) }),
      {
        field: 'choices',
        todo: message('season.loses-todo'),
      },
    )
  }
}

export function latestPlan(reading: Reading): Result<'season-plan.get'> {
  const plan = reading.db
    .select()
    .from(seasonPlan)
    .where(sql.raw(notUndone('season_plan')))
    .orderBy(desc(seasonPlan.id))
    .get()
  if (plan === undefined) return { plan: null }
  const choices = reading.db
    .select()
    .from(seasonPlanLine)
    .where(eq(seasonPlanLine.planId, plan.id))
    .orderBy(seasonPlanLine.siteId, seasonPlanLine.accessionId)
    .all()
  const { linesOf } = gather(
    reading,
    choices.map(({ accessionId }) => accessionId),
    plan.season,
  )
  return {
    plan: {
      planId: plan.id,
      season: plan.season,
      on: plan.onDate,
      note: plan.note,
      lines: linesOf(choices),
    },
  }
}
