import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { decimalMark, type Manner } from '../../domain/amounts/in-words.ts'
import { massFrom } from '../../domain/amounts/mass.ts'
import { seedCount } from '../../domain/amounts/seed-count.ts'
import { recountChange } from '../../domain/ledger/movement.ts'
import {
  gramsPerHundred,
  hundredSeedWeight,
  judgeReplicates,
  looksMisweighed,
  type WeighedSample,
  weightStatistics,
} from '../../domain/weights/hundred-seed-weight.ts'
import { readSample } from '../../domain/weights/read-sample.ts'
import { type Message, message } from '../../messages/message.ts'
import { lot, seedWeight, seedWeightReplicate } from '../../schema/stock-tables.ts'
import { balanceOf, gramsTold, heldIn, plausibleBand } from '../book/amounts.ts'
import type { Writes, Writing } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { writeMovement } from '../book/write-movement.ts'

type ShownWeight = Result<'lot.record-weight'>['weight']

/** A kept measurement as the contract shows it. */
export function shownWeight(row: typeof seedWeight.$inferSelect): ShownWeight {
  const weight = hundredSeedWeight(row.hundredSeedWeightUg)
  const judgement = judgeReplicates(
    {
      hundredSeedWeight: weight,
      replicates: row.replicates,
      seedsCounted: seedCount(row.seedsCounted),
      standardDeviation: null,
      coefficientOfVariation: row.coefficientOfVariation,
    },
    row.chaffy ? 'chaffy' : 'ordinary',
  )
  const spread = row.coefficientOfVariation
  return {
    weightId: row.id,
    measuredOn: row.measuredOn,
    gramsPerHundred: gramsPerHundred(weight),
    basis: 'measured',
    replicates: row.replicates,
    seedsCounted: row.seedsCounted,
    coefficientOfVariation: spread,
    judgement,
    words: howWeighed(row, gramsTold(weight)),
  }
}

function howWeighed(row: typeof seedWeight.$inferSelect, weight: number): Message {
  const { pooledDoubt, note, coefficientOfVariation: spread, seedsCounted: seeds, replicates } = row
  if (pooledDoubt !== null) return message('weight.noted', { weight, note })
  return spread === null
    ? message('weight.counted', { weight, seeds })
    : message('weight.replicates', { weight, replicates, spread: toOneDecimal(spread) })
}

function toOneDecimal(value: number): number {
  return Math.round(10 * value) / 10
}

/** Keeps a measurement of a lot's hundred-seed weight and puts it in force. Moves no seed. */
export function saveWeight(
  writing: Writing,
  lotId: number,
  on: string,
  samples: readonly WeighedSample[],
  chaffy: boolean,
  note: string,
) {
  const statistics = weightStatistics(samples)
  const row = writing.db
    .insert(seedWeight)
    .values({
      lotId,
      measuredOn: on,
      hundredSeedWeightUg: statistics.hundredSeedWeight,
      replicates: statistics.replicates,
      seedsCounted: statistics.seedsCounted,
      coefficientOfVariation: statistics.coefficientOfVariation,
      chaffy,
      note,
      entryId: writing.entryId,
    })
    .returning()
    .get()
  for (const [index, sample] of samples.entries()) {
    writing.db
      .insert(seedWeightReplicate)
      .values({ weightId: row.id, ordinal: index + 1, seeds: sample.seeds, massMg: sample.mass })
      .run()
  }
  writing.db.update(lot).set({ weightId: row.id }).where(eq(lot.id, lotId)).run()
  return row
}

/** A typed sample such as '25 weigh 6.10 g', or a refusal that says how to type it; null when nothing was typed. */
export function sampleOrRefuse(
  manner: Pick<Manner, 'locale'>,
  typed: string,
  field: string,
): WeighedSample | null {
  const reading = readSample(typed, decimalMark(manner))
  switch (reading.kind) {
    case 'empty':
      return null
    case 'sample':
      return reading.sample
    case 'unreadable':
      return refuse('amount-unreadable', reading.because, { field })
  }
}

/** Says when a hundred-seed weight lies outside its crop's plausible band; else null. */
export function misweighed(
  microgramsPerHundred: number,
  row: { crop: string; plausibleLowG: number | null; plausibleHighG: number | null },
): Message | null {
  const weight = hundredSeedWeight(microgramsPerHundred)
  const band = plausibleBand(row)
  if (band === null || !looksMisweighed(weight, band)) return null
  const [low, high] = band
  return message('weight.unusual', { weight: gramsTold(weight), crop: row.crop, low, high })
}

export const weighSeeds: Writes<'lot.record-weight'> = (writing, input) => {
  const before = lotOrRefuse(writing, input.lotId, 'lotId')
  const samples = input.replicates.map(({ seeds, grams }, index) => {
    const mass = massFrom(grams, 'g')
    if (mass === 0) {
      refuse('too-light', message('weight.too-light'), {
        field: `replicates.${index}.grams`,
      })
    }
    return { seeds: seedCount(seeds), mass }
  })
  const kept = saveWeight(writing, before.lotId, input.on, samples, input.chaffy, input.note)
  writeMovement(writing, {
    lotId: before.lotId,
    kind: 'recount',
    on: input.on,
    change: recountChange(balanceOf(before), before.basis, hundredSeedWeight(kept.hundredSeedWeightUg)),
    measured: before.basis === 'weighed' ? 'mass' : 'count',
    weight: hundredSeedWeight(kept.hundredSeedWeightUg),
    note: input.note,
  })
  const weight = shownWeight(kept)
  const warnings = [
    misweighed(kept.hundredSeedWeightUg, before),
    weight.judgement === 'weigh-again'
      ? message('weight.differ', {
          spread: toOneDecimal(weight.coefficientOfVariation ?? 0),
          limit: input.chaffy ? 6 : 4,
        })
      : null,
  ].filter((warning) => warning !== null)
  return {
    weight,
    balance: heldIn(lotOrRefuse(writing, before.lotId, 'lotId')),
    warnings,
    said: message('weight.said', { lot: before.lotNumber, weight: weight.words }),
    undoable: true,
  }
}
