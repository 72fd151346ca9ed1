import type { Handlers } from '../book/context.ts'
import { printBenchSheet } from './bench-sheet.ts'
import { makeCataloguePage, printCatalogue } from './catalogue.ts'
import { renderFireSheet } from './fire-sheet.ts'
import { printGrowerSheets } from './grower-sheets.ts'
import { printLabels } from './labels.ts'
import { previewLetter } from './letters.ts'
import { printRecallLetters } from './recall-letters.ts'
import { printRoundSheet } from './round-sheet.ts'
import { printStocktakeSheet } from './stocktake-sheet.ts'
import { printRuler, printStorageCards } from './storage-cards.ts'
import { previewTray } from './tray-preview.ts'
import { printYearReport } from './year-report.ts'

/** The operations that draw paper, which is half of all there is to load: loaded with the first of them that is called. */
export const printing = {
  'round.print': printRoundSheet,
  'germination.print': printBenchSheet,
  'season-plan.print': printGrowerSheets,
  'label.print': printLabels,
  'keep-card.print': printStorageCards,
  'ruler.print': printRuler,
  'stocktake.sheet': printStocktakeSheet,
  'catalogue.print': printCatalogue,
  'catalogue.export': makeCataloguePage,
  'report.print': printYearReport,
  'tray.render': previewTray,
  'letter.render': previewLetter,
  'fire-sheet.render': renderFireSheet,
  'recall.render-letters': printRecallLetters,
} satisfies Partial<Handlers>
