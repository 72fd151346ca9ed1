import type { Handlers } from '../book/context.ts'
import { makePackage, readPackageBack } from './data-package.ts'
import { previewList, refusedRows, takeListIn } from './list-import.ts'
import { exportLots, exportWorkbook, makeStock } from './lot-export.ts'
import { makeOccurrences, makePassports } from './passports.ts'
import { exportRecall } from './recall-export.ts'

/** The operations that this room answers. */
export const exchangeOperations = {
  'package.import': readPackageBack,
  'lot.export': exportLots,
  'lot.workbook': exportWorkbook,
  'import.preview': previewList,
  'package.export': makePackage,
  'passport.export': makePassports,
  'occurrence.export': makeOccurrences,
  'stock.export': makeStock,
  'import.list-refused': refusedRows,
  'import.record': takeListIn,
  'recall.export': exportRecall,
} satisfies Partial<Handlers>
