import * as climateTables from './climate-tables.ts'
import * as collectionTables from './collection-tables.ts'
import * as forecastTables from './forecast-tables.ts'
import * as germinationTables from './germination-tables.ts'
import * as giftTables from './gift-tables.ts'
import * as listTables from './list-tables.ts'
import * as printTables from './print-tables.ts'
import * as recallTables from './recall-tables.ts'
import * as referenceTables from './reference-tables.ts'
import * as seasonTables from './season-tables.ts'
import * as stockTables from './stock-tables.ts'

/** Every table, for drizzle and for the test that compares them with the file's own. */
export const tables = {
  ...climateTables,
  ...collectionTables,
  ...germinationTables,
  ...forecastTables,
  ...giftTables,
  ...listTables,
  ...recallTables,
  ...referenceTables,
  ...seasonTables,
  ...stockTables,
  ...printTables,
} as const
