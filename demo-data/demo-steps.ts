import { benchCountStep, benchEndStep, benchTestStep } from './bench-steps.ts'
import { careStep, printingStep, splitStep, takenBackStep } from './care-steps.ts'
import { climateStep } from './climate-steps.ts'
import type { DemoStep } from './demo-book.ts'
import type { DemoTables } from './demo-tables.ts'
import { duplicateStep, institutionSteps } from './elsewhere-steps.ts'
import { giftSteps, offerStep, returnStep } from './incoming-steps.ts'
import { keepingStep, recallStep } from './keeping-steps.ts'
import { figureStep, germinationStep, stocktakeSteps, weightStep } from './measuring-steps.ts'
import { gardenStep, seasonListStep, visitSteps, waiveStep } from './outgoing-steps.ts'
import { roundSteps } from './round-steps.ts'

/** Every entry of the demonstration by day; within a day seed comes in before it is measured and goes out. */
export function stepsOf(tables: DemoTables): DemoStep[] {
  const steps = [
    ...tables.figures.map(figureStep),
    ...giftSteps(tables.gifts),
    ...tables.offers.map(offerStep),
    ...tables.returns.map(returnStep),
    ...tables.weights.map(weightStep),
    ...tables.germination.map(germinationStep),
    ...tables['bench-tests'].map(benchTestStep),
    ...tables['bench-counts'].map(benchCountStep),
    ...tables['bench-ends'].map(benchEndStep),
    ...tables.splits.map(splitStep),
    ...tables.care.map(careStep),
    ...tables.climates.map(climateStep),
    ...roundSteps(tables.rounds),
    ...stocktakeSteps(tables.stocktakes),
    ...visitSteps(tables),
    ...tables.duplicates.map(duplicateStep),
    ...tables.institutions.flatMap(institutionSteps),
    ...tables.keeping.map(keepingStep),
    ...tables.recalls.map(recallStep),
    ...tables.waivers.map(waiveStep),
    ...tables.gardens.map(gardenStep),
    ...tables['season-lists'].map(seasonListStep),
    ...tables.printing.map(printingStep),
    ...tables['taken-back'].map(takenBackStep),
  ]
  return steps.toSorted((a, b) => a.on.localeCompare(b.on))
}
