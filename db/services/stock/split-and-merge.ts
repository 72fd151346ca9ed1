import { and, eq, lte, sql } from 'drizzle-orm'
import type { ParsedInput } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { type Change, takeOut } from '../../domain/ledger/movement.ts'
import { limitsOnGiving } from '../../domain/terms/gift-limits.ts'
import { pooledWeight } from '../../domain/weights/hundred-seed-weight.ts'
import { message } from '../../messages/message.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import { moisturesOfLot } from '../../queries/lot-climate.ts'
import type { LotRow } from '../../queries/lot-rows.ts'
import { latestMeasurement, notUndone } from '../../queries/measurements.ts'
import { seedMoisture } from '../../schema/climate-tables.ts'
import { germinationResult } from '../../schema/germination-tables.ts'
import { lot, seedWeight } from '../../schema/stock-tables.ts'
import { amountOrRefuse, balanceOf, countDoubt, heldIn, weightInForce } from '../book/amounts.ts'
import { askOnce } from '../book/ask-once.ts'
import { changeLot } from '../book/change-lot.ts'
import type { Writes, Writing } from '../book/context.ts'
import { addLot, lotOrRefuse, noteParent } from '../book/new-lot.ts'
import { placeOrRefuse } from '../book/places.ts'
import { settingsOf } from '../book/settings.ts'
import { refuseTooMuch } from '../book/too-much.ts'
import { writeMovement } from '../book/write-movement.ts'
import { writeTerms } from './duplicates.ts'

export const splitLot: Writes<'lot.split'> = (writing, input) => {
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  if (input.placeId !== null) placeOrRefuse(writing, input.placeId, 'placeId')
  if (input.role === 'duplicate-elsewhere' && input.heldBy === '') {
    refuse('words-missing', message('stock.who-holds'), { field: 'heldBy' })
  }
  if (input.terms !== null && input.role !== 'duplicate-elsewhere') {
    refuse('wrong-role', message('elsewhere.no-terms-here'), { field: 'terms' })
  }
  if (input.role === 'duplicate-elsewhere') askIfLimited(writing, row)
  const amount = amountOrRefuse(settingsOf(writing), input.amount, row.packetSeeds, 'amount')
  const { weight } = weightInForce(row)
  const out = takeOut(balanceOf(row), amount, weight)
  if (out.kind === 'not-enough') refuseTooMuch(row, out, 'amount', settingsOf(writing))
  const target = addLot(writing, partOf(row, input), input.on)
  noteParent(writing, target.id, row.lotId, 'split')
  inheritMeasurements(writing, row, target.id, input.on)
  if (input.terms !== null) writeTerms(writing, target.id, input.terms)
  const line = { kind: 'split', on: input.on, note: input.note } as const
  writeMovement(writing, { ...line, lotId: row.lotId, change: out.change, measured: out.measured, weight })
  writeMovement(writing, {
    ...line,
    lotId: target.id,
    change: opposite(out.change),
    measured: 'carried',
    weight: null,
  })
  const left = heldIn(lotOrRefuse(writing, row.lotId, 'lotId'))
  const moved = heldIn(lotOrRefuse(writing, target.id, 'lotId'))
  return {
    newLotId: target.id,
    newLotNumber: target.number,
    left,
    moved,
    said: message('stock.split', { amount: moved.words, lot: row.lotNumber, part: target.number }),
    undoable: true,
  }
}

/** Seed that its giver set limits for leaves the house only where that was agreed. */
function askIfLimited(writing: Writing, { accessionId, lotNumber: lot }: LotRow): void {
  const limits = limitsOfAccession(writing.sqlite, accessionId)
  const [limit] = limitsOnGiving(limits, 'safety-duplicate', writing.today).cautions
  if (limit === undefined) return
  const sentence = message('terms.kept-elsewhere', { sentence: message(`terms.caution.${limit}`, { lot }) })
  askOnce(writing, `${limit} ${lot}`, sentence, 'role')
}

function partOf(row: LotRow, input: ParsedInput<'lot.split'>) {
  const elsewhere = input.role === 'duplicate-elsewhere'
  return {
    accessionId: row.accessionId,
    role: input.role,
    basis: row.basis,
    estimated: row.estimated === 1,
    harvestFrom: row.harvestFrom,
    harvestTo: row.harvestTo,
    harvestAbout: row.harvestAbout === 1,
    generation: row.generation,
    placeId: elsewhere ? null : input.placeId,
    heldBy: input.heldBy,
    heldSince: elsewhere ? input.on : null,
    quarantineReason: row.quarantineReason,
  }
}

/**
 * A part of a lot is as heavy, as alive and as dry as the whole: its last weighing goes with it, and its tests and moistures
 * up to the day on which it was split off.
 */
function inheritMeasurements(writing: Writing, from: LotRow, lotId: number, on: string): void {
  const { db, entryId } = writing
  const weight = db
    .select()
    .from(seedWeight)
    .where(eq(seedWeight.id, from.weightId ?? 0))
    .get()
  const note = writing.say(message('stock.carried-over', { lot: from.lotNumber }))
  const weightId =
    weight &&
    db
      .insert(seedWeight)
      .values({ ...weight, id: undefined, lotId, note, entryId })
      .returning({ id: seedWeight.id })
      .get().id
  const results = db
    .select()
    .from(germinationResult)
    .where(
      and(
        eq(germinationResult.lotId, from.lotId),
        lte(germinationResult.testedOn, on),
        sql.raw(notUndone('germination_result')),
      ),
    )
    .orderBy(germinationResult.testedOn, germinationResult.id)
    .all()
  for (const result of results) {
    db.insert(germinationResult)
      .values({ ...result, id: undefined, lotId, note, entryId })
      .run()
  }
  for (const row of moisturesOfLot(writing.sqlite, from.lotId).toReversed()) {
    if (row.measuredOn > on) continue
    db.insert(seedMoisture)
      .values({
        lotId,
        measuredOn: row.measuredOn,
        method: row.method,
        percent: row.percent,
        lowPercent: row.lowPercent,
        highPercent: row.highPercent,
        observed: row.observed,
        note,
        entryId,
      })
      .run()
  }
  db.update(lot)
    .set({
      weightId: weightId ?? null,
      germinationId: latestMeasurement(writing.sqlite, 'germination_result', lotId),
    })
    .where(eq(lot.id, lotId))
    .run()
}

function opposite(change: Change): Change {
  return { count: 0 - change.count, mass: 0 - change.mass }
}

export const mergeLots: Writes<'lot.merge'> = (writing, input) => {
  const into = lotOrRefuse(writing, input.intoLotId, 'intoLotId')
  const from = [...new Set(input.fromLotIds)].map((id, index) =>
    lotOrRefuse(writing, id, `fromLotIds.${index}`),
  )
  for (const [index, row] of from.entries()) refuseUnlike(into, row, `fromLotIds.${index}`)
  const all = [into, ...from]
  for (const row of from) {
    const { count, mass } = balanceOf(row)
    const line = { kind: 'merge', on: input.on, note: input.note, measured: 'carried', weight: null } as const
    writeMovement(writing, { ...line, lotId: row.lotId, change: { count: -count, mass: -mass } })
    writeMovement(writing, { ...line, lotId: into.lotId, change: { count, mass } })
    noteParent(writing, into.lotId, row.lotId, 'merged')
  }
  poolWeights(writing, into, from, input.on)
  const years = all.flatMap((row) => [row.harvestFrom, row.harvestTo])
  const known = years.filter((year) => year !== null)
  const allKnown = known.length === years.length
  changeLot(writing, into.lotId, {
    harvestFrom: allKnown ? Math.min(...known) : null,
    harvestTo: allKnown ? Math.max(...known) : null,
    harvestAbout: all.some((row) => row.harvestAbout === 1) && new Set(known).size === 1,
    basis: all.some((row) => row.basis === 'weighed' && row.balanceCount > 0) ? 'weighed' : into.basis,
    estimated: all.some((row) => row.estimated === 1),
    generation: Math.max(...all.map((row) => row.generation)),
  })
  const balance = heldIn(lotOrRefuse(writing, into.lotId, 'intoLotId'))
  return {
    balance,
    said: message('stock.merged', {
      lots: { list: from.map((row) => row.lotNumber) },
      lot: into.lotNumber,
      amount: balance.words,
    }),
    undoable: true,
  }
}

/** Puts the weight of what was poured together in force, where its parts were not weighed by one and the same weight. */
function poolWeights(writing: Writing, into: LotRow, from: readonly LotRow[], on: string): void {
  const all = [into, ...from]
  if (new Set(all.map(weightFacts)).size === 1) return
  const pooled = pooledWeight(all.map((row) => ({ ...balanceOf(row), doubt: countDoubt(row) })))
  if (pooled === null) return
  const sum = (of: (row: LotRow) => number | null) => all.reduce((total, row) => total + (of(row) ?? 0), 0)
  const { id } = writing.db
    .insert(seedWeight)
    .values({
      lotId: into.lotId,
      measuredOn: on,
      hundredSeedWeightUg: pooled.weight,
      replicates: Math.max(
        1,
        sum((row) => row.weightReplicates),
      ),
      seedsCounted: Math.max(
        1,
        sum((row) => row.weightSeeds),
      ),
      coefficientOfVariation: null,
      chaffy: false,
      note: `of ${all.map((row) => row.lotNumber).join(', ')} together`,
      entryId: writing.entryId,
      pooledDoubt: pooled.doubt,
    })
    .returning({ id: seedWeight.id })
    .get()
  writing.db.update(lot).set({ weightId: id }).where(eq(lot.id, into.lotId)).run()
}

/** What tells one weighing from another: parts of one lot were weighed together and carry the same. */
function weightFacts(row: LotRow): string {
  return [row.weightUg, row.weightReplicates, row.weightSeeds, row.weightCv, row.weightPooledDoubt].join()
}

function refuseUnlike(into: LotRow, from: LotRow, field: string): void {
  if (from.lotId === into.lotId) refuse('same-record', message('stock.into-itself'), { field })
  if (from.accessionId !== into.accessionId) {
    refuse('not-mergeable', message('stock.other-accession', { lot: from.lotNumber }), { field })
  }
  if ((from.quarantineReason === null) !== (into.quarantineReason === null)) {
    refuse(
      'in-quarantine',
      message('stock.one-in-quarantine', { lot: from.lotNumber, into: into.lotNumber }),
      { field },
    )
  }
  if (from.balanceCount === 0 && from.balanceMassMg === 0) {
    refuse('not-enough-seed', message('stock.nothing-to-pour', { lot: from.lotNumber }), { field })
  }
}
