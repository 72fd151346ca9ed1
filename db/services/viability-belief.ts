import type { AgeingLot } from '../domain/needs/cost-of-waiting.ts'
import { aged, beliefFromAssumption, beliefFromTest, type ViabilityBelief } from '../domain/needs/outlook.ts'
import type { LifeRow } from '../queries/lot-rows.ts'
import { countDoubt } from './amounts.ts'
import { lifeOf } from './living-stock.ts'

/** Years that the seed of a crop without a figure keeps. Common practice, no source. */
const STORAGE_YEARS_WITHOUT_FIGURES = 3

/** What is believed of a lot's viability so many years from today: the one place that decides it. */
function beliefIn(row: LifeRow): (years: number) => ViabilityBelief {
  const today =
    row.tested !== null && row.sprouted !== null
      ? beliefFromTest(row.sprouted, row.tested)
      : beliefFromAssumption(lifeOf(row).viability)
  return (years) => aged(today, years, row.storage_years ?? STORAGE_YEARS_WITHOUT_FIGURES)
}

/** A lot as the outlook of its accession sees it. */
export function ageingLot(row: LifeRow): AgeingLot {
  return { seeds: row.balance_count, countDoubt: countDoubt(row), beliefIn: beliefIn(row) }
}
