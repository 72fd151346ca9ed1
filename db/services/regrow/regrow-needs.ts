import type { NeedLine } from '../../contract/regeneration-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { countsByState } from '../../domain/needs/need.ts'
import { type Season, seasonOf } from '../../domain/needs/season.ts'
import { regrowingsLeft } from '../../domain/needs/sowing.ts'
import { byUrgency, toldCost, toldUrgency, type UrgencyFacts } from '../../domain/needs/urgency.ts'
import { type Message, message } from '../../messages/message.ts'
import type { Sqlite } from '../../migrations/connection.ts'
import { lotsOfAccessions } from '../../queries/lot-rows.ts'
import { accessionsMatching } from '../../queries/need-rows.ts'
import { prepared } from '../../queries/prepared.ts'
import { matchFor } from '../../queries/search-words.ts'
import type { Reading, Reads } from '../book/context.ts'
import { textAndCropsCalled } from '../book/crops-called.ts'
import { livingStockOf, policyOf } from '../book/living-stock.ts'
import { settingsOf } from '../book/settings.ts'
import { growingNow } from './grow-outs.ts'
import { isHeldElsewhere, type Judgement, judgements } from './judgements.ts'
import { sowingOf } from './sowing-and-rescue.ts'

/** Everything by which the accessions of a collection are ranked, in one reading. */
export interface Ranking {
  readonly season: Season
  readonly policy: ReturnType<typeof settingsOf>
  /** Most urgent first. */
  readonly ranked: readonly UrgencyFacts[]
  /** What is being grown now, or failed of late, by accession. */
  readonly grown: ReturnType<typeof growingNow>
}

const kept = new WeakMap<Sqlite, { readonly as: string; readonly ranking: Ranking }>()

/**
 * Ranks every accession of the collection.
 *
 * The last ranking is kept until a row of the file changes or the day does: a card opened after the list asks for no
 * other. Not while something is being written, which may yet be refused.
 */
export function rankNeeds(reading: Reading): Ranking {
  const { sqlite, today } = reading
  const judged = judgements.all(reading)
  if (sqlite.inTransaction || reading.collection.access === 'read') return rankAnew(reading, judged)
  const as = `${today} ${prepared(sqlite, 'SELECT total_changes()').pluck().get()}`
  const last = kept.get(sqlite)
  if (last?.as === as) return last.ranking
  const ranking = rankAnew(reading, judged)
  kept.set(sqlite, { as, ranking })
  return ranking
}

function rankAnew(reading: Reading, judged: ReadonlyMap<number, Judgement>): Ranking {
  const policy = settingsOf(reading)
  const season = seasonOf(reading.today, policy.sowingDay)
  const grown = growingNow(reading, season.year)
  const sources = new Map<number, number>()
  for (const { varietyId, living } of judged.values()) {
    if (living > 0) sources.set(varietyId, (sources.get(varietyId) ?? 0) + 1)
  }
  const ranked = [...judged.values()]
    .map(({ varietyId, elsewhere, ...facts }) => {
      const others = (sources.get(varietyId) ?? 0) - (facts.living > 0 ? 1 : 0)
      return {
        ...facts,
        growing: grown.get(facts.accessionId)?.failed === false,
        onlySource: !elsewhere && others <= 0,
      }
    })
    .toSorted(byUrgency)
  return { season, policy, ranked, grown }
}

export const rankedNeeds: Reads<'regeneration.list'> = (reading, input) => {
  const ranking = rankNeeds(reading)
  const match = matchFor(textAndCropsCalled(input.text))
  const matching = match === null ? null : accessionsMatching(reading.sqlite, match)
  const inState = Map.groupBy(ranking.ranked, ({ state }) => state)
  const wanted = ranking.ranked
    .map((facts, index) => ({ facts, rank: index + 1 }))
    .filter(
      ({ facts }) =>
        (input.state === undefined || facts.state === input.state) &&
        (matching === null || matching.has(facts.accessionId)),
    )
  const page = wanted.slice(input.offset, input.offset + input.limit)
  return {
    season: ranking.season,
    grade: ranking.policy.grade,
    counts: countsByState((state) => inState.get(state)?.length ?? 0),
    total: wanted.length,
    needs: needLines(reading, ranking, page),
  }
}

/** What waiting costs, or why it costs nothing. */
function costTold({ state, cost }: UrgencyFacts): Message {
  if (state === 'not-kept') return message('keeping.not-kept')
  return state === 'none-left' ? message('needs.none-left') : toldCost(cost)
}

/** Lines of the list for some of its accessions, in the order given. */
export function needLines(
  reading: Reading,
  ranking: Ranking,
  page: readonly { readonly facts: UrgencyFacts; readonly rank: number }[],
): Untold<NeedLine>[] {
  const ids = page.map(({ facts }) => facts.accessionId)
  const lotsOf = Map.groupBy(lotsOfAccessions(reading.sqlite, ids), (row) => row.accessionId)
  return page.map(({ facts, rank }) => {
    const lots = lotsOf.get(facts.accessionId) ?? []
    const first = lots[0]
    if (first === undefined) throw new Error(`No lots of accession ${facts.accessionId}`)
    const policy = policyOf(first, ranking.policy)
    return {
      rank,
      accessionId: facts.accessionId,
      accessionNumber: first.accessionNumber,
      variety: first.variety,
      crop: first.crop,
      state: facts.state,
      stock: livingStockOf(lots, ranking.policy),
      cost: facts.cost,
      costInWords: costTold(facts),
      regrowingsLeft: regrowingsLeft(facts.living, policy),
      sow: sowingOf(reading, lots, ranking.policy),
      demand: facts.demand,
      onlySource: facts.onlySource,
      heldElsewhere: lots
        .filter(isHeldElsewhere)
        .map((lot) =>
          lot.heldBy === ''
            ? lot.lotNumber
            : message('needs.elsewhere-with', { lot: lot.lotNumber, holder: lot.heldBy }),
        ),
      generation: Math.max(...lots.map((lot) => lot.generation)),
      growOut: ranking.grown.get(facts.accessionId) ?? null,
      why: toldUrgency(facts, first.countedUnit, ranking.season.year + 1),
    }
  })
}
