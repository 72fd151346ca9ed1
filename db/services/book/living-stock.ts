import type { LivingStock } from '../../contract/fields.ts'
import type { Untold } from '../../contract/told.ts'
import type { Manner } from '../../domain/amounts/in-words.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import { isPiece } from '../../domain/crops/pieces.ts'
import {
  assumedBand,
  assumedViability,
  type ViabilityBasis,
} from '../../domain/germination/assumed-viability.ts'
import { wilsonInterval } from '../../domain/germination/wilson.ts'
import { type LivingSeeds, type LotLife, livingSeeds } from '../../domain/needs/living-seeds.ts'
import { judgeNeed, type NeedFacts, type NeedState, needState, toKeepOf } from '../../domain/needs/need.ts'
import { type PopulationFigures, type PopulationGoal, plantsFor } from '../../domain/needs/population-goal.ts'
import type { KeepingPolicy } from '../../domain/needs/what-to-keep.ts'
import { partOfAllSeed, type RegrowPolicy, regrowThreshold } from '../../domain/viability/regrow-threshold.ts'
import { type Message, message, type Part } from '../../messages/message.ts'
import type { LifeRow } from '../../queries/lot-rows.ts'
import { countDoubt, weightInForce } from './amounts.ts'

/** The collection's own policy, for accessions that have none of their own, and how it writes. */
export interface CollectionPolicy extends Manner, RegrowPolicy {
  readonly regrowingsKept: number
  readonly emergence: number
  readonly assurance: number
  readonly grade: PopulationGoal
}

/** How alive a lot is thought to be, where that comes from, and by which day; no day where nothing was forecast. */
export interface RowLife extends LotLife {
  readonly basis: ViabilityBasis
  readonly on: string | null
}

/**
 * How alive one lot is thought to be: as forecast from its tests, its age and how it was kept.
 *
 * Untested seed is not credited with more than is assumed of any seed of its crop, however good its forecast.
 */
export function lifeOf(row: LifeRow): RowLife {
  const { basis, viability, range } = partAlive(row)
  const life = { count: row.balanceCount, countDoubt: countDoubt(row), basis, on: row.forecastOn }
  return { ...life, viability, viabilityRange: range }
}

function partAlive(row: LifeRow): PartAlive {
  if (isPiece(row.countedUnit)) {
    const sound = row.forecastViability ?? 1
    return { basis: 'season', viability: sound, range: [sound, sound] }
  }
  return row.tested === null ? untestedLife(row) : testedLife(row)
}

interface PartAlive {
  readonly basis: ViabilityBasis
  readonly viability: number
  readonly range: readonly [low: number, high: number]
}

function testedLife(row: LifeRow): PartAlive {
  const { forecastViability: viability, forecastLow: low, forecastHigh: high } = row
  if (viability !== null && low !== null && high !== null)
    return { basis: 'tested', viability, range: [low, high] }
  const [sprouted, tested] = [row.sprouted ?? 0, row.tested ?? 1]
  return { basis: 'tested', viability: sprouted / tested, range: wilsonInterval(sprouted, tested, 90) }
}

function untestedLife(row: LifeRow): PartAlive {
  const { viability: assumed, basis } = assumedViability({
    federalMinimumPercent: row.federalMinimumPercent,
    stateMinimumPercent: row.stateMinimumPercent,
  })
  const { forecastViability: viability, forecastLow: low, forecastHigh: high } = row
  if (viability === null || low === null || high === null)
    return { basis, viability: assumed, range: assumedBand(assumed, row.storageYears) }
  if (viability < assumed) return { basis: 'forecast', viability, range: [low, high] }
  return { basis, viability: assumed, range: [Math.min(low, assumed), high] }
}

/** Living seeds of one lot, to the nearest seed. */
export function livingOf(row: LifeRow): number {
  return livingSeeds([lifeOf(row)]).about
}

/** The part of all seed that must be alive in a lot. */
export function thresholdOf(row: LifeRow, policy: CollectionPolicy): number {
  return partOfAllSeed(regrowThreshold(row.threshold, policy), row.forecastStart)
}

/** How an accession stands, in figures. */
export interface Standing {
  readonly living: LivingSeeds
  readonly keep: number
  readonly state: NeedState
}

/**
 * How an accession stands, from all its lots.
 *
 * Working stock and reserve count; the reference sample, duplicates elsewhere and seed in quarantine do not.
 * `lots` must be every lot of one accession, at least one.
 */
export function standingOf(lots: readonly LifeRow[], policy: CollectionPolicy): Standing {
  const { facts } = needFacts(lots, policy)
  return { living: facts.living, keep: toKeepOf(facts), state: needState(facts) }
}

/** The same as {@link standingOf}, with the reasons in words and the arithmetic line by line. */
export function livingStockOf(lots: readonly LifeRow[], policy: CollectionPolicy): Untold<LivingStock> {
  const { facts, counted } = needFacts(lots, policy)
  const { living, unit } = facts
  const need = judgeNeed(facts)
  return {
    living: living.about,
    low: living.low,
    high: living.high,
    total: living.total,
    keep: need.keep,
    unit: countedUnit(unit).many,
    state: need.state,
    sentence: need.sentence,
    reasons: [...need.reasons],
    arithmetic: [...need.arithmetic],
    viabilityNotes: viabilityNotes(counted),
  }
}

interface CountedLot {
  readonly row: LifeRow
  readonly life: RowLife
}

function needFacts(
  lots: readonly LifeRow[],
  policy: CollectionPolicy,
): { facts: NeedFacts; counted: readonly CountedLot[] } {
  const first = lots[0]
  if (first === undefined) throw new RangeError('An accession without lots has no stock to judge')
  const counted = lots.filter(countsTowardsKeeping).map((row) => ({ row, life: lifeOf(row) }))
  const lives = counted.map(({ life }) => life)
  const facts = {
    living: livingSeeds(lives),
    policy: policyOf(first, policy),
    ...strengthOf(counted, first, policy),
    notCounted: seedsOf(lots.filter((row) => !countsTowardsKeeping(row))),
    unit: first.countedUnit,
    keeping: { breeding: first.breeding, policy: first.policy },
  }
  return { facts, counted }
}

/** Whether a lot's seed counts towards what must be kept. */
export function countsTowardsKeeping(row: LifeRow): boolean {
  return (row.role === 'working' || row.role === 'reserve') && row.quarantineReason === null
}

/** Seeds that lie here without counting towards what must be kept: in quarantine, or the reference sample. */
export function seedsSetAside(lots: readonly LifeRow[]): number {
  return seedsOf(lots.filter((row) => !countsTowardsKeeping(row) && row.role !== 'duplicate-elsewhere'))
}

function seedsOf(lots: readonly LifeRow[]): number {
  return lots.reduce((sum, row) => sum + row.balanceCount, 0)
}

/** What decides how many living seeds of an accession are kept. Of pieces one planting: they do not last to a second. */
export function policyOf(row: LifeRow, policy: CollectionPolicy): KeepingPolicy {
  const plants = row.ownPlants ?? plantsFor(populationOf(row), row.ownGrade ?? policy.grade)
  if (isPiece(row.countedUnit)) return { regrowings: 1, plants, emergence: 1, spoils: true }
  return {
    regrowings: row.regrowings ?? policy.regrowingsKept,
    plants,
    emergence: policy.emergence,
    assurance: row.ownAssurance ?? policy.assurance,
  }
}

/** The crop table's plants per regrowing, as a lot's row carries them. */
export function populationOf(row: LifeRow): PopulationFigures {
  return {
    matingSystem: row.matingSystem,
    plantsForSeed: row.plantsForSeed,
    plantsToMaintain: row.plantsToMaintain,
    plantsToConserve: row.plantsToConserve,
  }
}

/** How strong the tested lots are together, seed for seed, and how strong they should be. */
function strengthOf(
  counted: readonly CountedLot[],
  first: LifeRow,
  policy: CollectionPolicy,
): Pick<NeedFacts, 'testedViability' | 'threshold' | 'untested'> {
  const tested = counted.filter(({ life }) => life.basis === 'tested' && life.count > 0)
  const seeds = tested.reduce((sum, { life }) => sum + life.count, 0)
  const untested = livingSeeds(
    counted
      .filter(({ life }) => life.basis !== 'tested' && life.basis !== 'forecast' && life.basis !== 'season')
      .map(({ life }) => life),
  ).about
  if (seeds === 0) return { testedViability: null, threshold: thresholdOf(first, policy), untested }
  const mean = (of: (lot: CountedLot) => number) =>
    tested.reduce((sum, lot) => sum + lot.life.count * of(lot), 0) / seeds
  return {
    testedViability: mean(({ life }) => life.viability),
    threshold: mean(({ row }) => thresholdOf(row, policy)),
    untested,
  }
}

/** Says where the viability figure of untested seed comes from. */
export function assumedTold(viability: number, basis: Exclude<ViabilityBasis, 'tested'>): Message {
  const alive = { part: viability }
  if (basis === 'season') return message('pieces.sound-by-season', { sound: viability > 0 ? 'yes' : 'no' })
  return basis === 'forecast'
    ? message('alive.forecast', { alive })
    : message(`alive.assumed.${basis}`, { alive })
}

function viabilityNotes(counted: readonly CountedLot[]): Message[] {
  const held = counted.filter(({ row }) => row.balanceCount > 0)
  if (held.some(({ life }) => life.basis === 'season')) return seasonNotes(held)
  const tested = held.filter(({ life }) => life.basis === 'tested')
  const untested = held.find(({ life }) => life.basis !== 'tested')
  const latest = tested.toSorted((a, b) => (b.row.testedOn ?? '').localeCompare(a.row.testedOn ?? ''))[0]
  const guessed = held.some(({ row }) => row.basis === 'weighed' && weightInForce(row).basis === 'guess')
  return [
    ...(latest === undefined ? [] : testTold(latest)),
    ...(untested === undefined ? [] : untestedTold(untested, tested.length > 0)),
    ...(guessed ? [message('alive.count-guessed')] : []),
  ]
}

/** Of pieces: that they keep for a season, and how many lots are over theirs. */
function seasonNotes(held: readonly CountedLot[]): Message[] {
  const over = held.filter(({ life }) => life.viability === 0).length
  return [message('pieces.grown-every-year'), ...(over === 0 ? [] : [message('pieces.over', { lots: over })])]
}

/** The last test, and the forecast with its day and its 90 % band where there is one. */
function testTold({ row, life: { on, viability, viabilityRange: range } }: CountedLot): Message[] {
  const test = message('alive.last-tested', {
    on: { day: row.testedOn ?? '' },
    sprouted: row.sprouted ?? 0,
    tested: row.tested ?? 0,
  })
  if (on === null) return [test]
  const [low, high] = range.map((part) => ({ part })) as [Part, Part]
  return [test, message('alive.forecast-for', { on: { day: on }, alive: { part: viability }, low, high })]
}

/** What is thought of untested seed; the band of what has no forecast is a rule of thumb. */
function untestedTold({ row, life }: CountedLot, others: boolean): Message[] {
  if (life.basis === 'tested') return []
  const [low, high] = life.viabilityRange.map((part) => ({ part })) as [Part, Part]
  return [
    message('alive.untested', {
      others: others ? 'yes' : 'no',
      assumed: assumedTold(life.viability, life.basis),
      ruled: row.forecastViability === null ? 'yes' : 'no',
      low,
      high,
    }),
  ]
}
