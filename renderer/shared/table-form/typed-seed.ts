import { readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import { amountProblem, readTypedSample } from '../format/manner.ts'
import { onlyProblems, type UntoldProblems } from './refusals.ts'

/** What is asked of all seed that comes in, as it is typed. */
export interface TypedSeed {
  readonly harvest: string
  readonly amount: string
  readonly sample: string
}

export type SeedStep = keyof TypedSeed

/** What is wrong with harvest, amount and sample as they stand. */
export function seedProblems(line: TypedSeed, thisYear: number): UntoldProblems<SeedStep> {
  const harvest = readHarvestYear(line.harvest, thisYear)
  const sample = readTypedSample(line.sample)
  return onlyProblems({
    harvest: harvest.kind === 'unreadable' ? harvest.because : undefined,
    amount: amountProblem(line.amount),
    sample: sample.kind === 'unreadable' ? sample.because : undefined,
  })
}
