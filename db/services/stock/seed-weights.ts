import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { type Manner, numberInWords } from '../../domain/amounts/in-words.ts'
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
import { lot, seedWeight, seedWeightReplicate } from '../../schema/stock-tables.ts'
import { balanceOf, plausibleBand, quantityOf, weightInWords } from '../book/amounts.ts'
import type { Writes, Writing } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { settingsOf } from '../book/settings.ts'
import { writeMovement } from '../book/write-movement.ts'

type ShownWeight = Result<'lot.record-weight'>['weight']

/** A kept measurement as the contract shows it. */
export function shownWeight(row: typeof seedWeight.$inferSelect, manner: Manner): ShownWeight {
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
  const how =
    row.pooledDoubt !== null
      ? row.note
      : spread === null
        ? `${row.seedsCounted} counted and weighed`
        : `${row.replicates} replicates, coefficient of variation ${numberInWords(spread, manner, 1)} %`
  return {
    weightId: row.id,
    measuredOn: row.measuredOn,
    gramsPerHundred: gramsPerHundred(weight),
    basis: 'measured',
    replicates: row.replicates,
    seedsCounted: row.seedsCounted,
    coefficientOfVariation: spread,
    judgement,
    words: `${weightInWords(weight, manner)} (${how})`,
  }
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
export function sampleOrRefuse(typed: string, field: string): WeighedSample | null {
  const reading = readSample(typed)
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
  manner: Manner,
): string | null {
  const weight = hundredSeedWeight(microgramsPerHundred)
  const band = plausibleBand(row)
  if (band === null || !looksMisweighed(weight, band)) return null
  const [low, high] = band.map((grams) => numberInWords(grams, manner, 6))
  return `${weightInWords(weight, manner)} is unusual for ${row.crop} (usually ${low} to ${high} g). Was it weighed and counted right?`
}

export const weighSeeds: Writes<'lot.record-weight'> = (writing, input) => {
  const before = lotOrRefuse(writing, input.lotId, 'lotId')
  const samples = input.replicates.map(({ seeds, grams }, index) => {
    const mass = massFrom(grams, 'g')
    if (mass === 0) {
      refuse('too-light', 'That is less than a milligram. Count more seeds into the sample.', {
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
  const manner = settingsOf(writing)
  const weight = shownWeight(kept, manner)
  const warnings = [
    misweighed(kept.hundredSeedWeightUg, before, manner),
    weight.judgement === 'weigh-again'
      ? `The replicates differ too much (coefficient of variation ${numberInWords(weight.coefficientOfVariation ?? 0, manner, 1)} %, limit ${input.chaffy ? 6 : 4} %). Weigh eight more.`
      : null,
  ].filter((warning) => warning !== null)
  return {
    weight,
    balance: quantityOf(lotOrRefuse(writing, before.lotId, 'lotId'), manner),
    warnings,
    said: `${before.lotNumber}: ${weight.words}`,
    undoable: true,
  }
}
