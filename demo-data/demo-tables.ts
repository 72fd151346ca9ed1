import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { z } from 'zod'
import { type Row, readRows } from './read-rows.ts'
import {
  BenchCountRow,
  BenchEndRow,
  BenchTestRow,
  CareRow,
  ClimateRow,
  DuplicateRow,
  FigureRow,
  GardenRow,
  GerminationRow,
  GiftRow,
  InstitutionRow,
  KeepingRow,
  OfferRow,
  PersonRow,
  PlaceRow,
  PrintingRow,
  RecallRow,
  ReturnRow,
  RoundRow,
  SeasonListRow,
  SplitRow,
  StocktakeRow,
  TakenBackRow,
  VarietyRow,
  VisitLineRow,
  VisitRow,
  WaiverRow,
  WeightRow,
} from './row-shapes.ts'

const SHAPES = {
  people: PersonRow,
  places: PlaceRow,
  varieties: VarietyRow,
  figures: FigureRow,
  gifts: GiftRow,
  offers: OfferRow,
  visits: VisitRow,
  'visit-lines': VisitLineRow,
  returns: ReturnRow,
  splits: SplitRow,
  weights: WeightRow,
  germination: GerminationRow,
  'bench-tests': BenchTestRow,
  'bench-counts': BenchCountRow,
  'bench-ends': BenchEndRow,
  care: CareRow,
  climates: ClimateRow,
  rounds: RoundRow,
  stocktakes: StocktakeRow,
  duplicates: DuplicateRow,
  institutions: InstitutionRow,
  keeping: KeepingRow,
  recalls: RecallRow,
  waivers: WaiverRow,
  gardens: GardenRow,
  'season-lists': SeasonListRow,
  printing: PrintingRow,
  'taken-back': TakenBackRow,
} as const

export type TableName = keyof typeof SHAPES
/** A checked row of one of the files. */
export type RowOf<N extends TableName> = Row<z.output<(typeof SHAPES)[N]>>
export type DemoTables = { readonly [N in TableName]: readonly RowOf<N>[] }

/** Reads and checks every file of the demonstration; throws naming file, row and column of what does not fit. */
export function readTables(folder: string): DemoTables {
  const names = Object.keys(SHAPES) as TableName[]
  const entries = names.map((name) => {
    const text = readFileSync(join(folder, `${name}.csv`), 'utf8')
    return [name, readRows(`${name}.csv`, text, SHAPES[name])]
  })
  return Object.fromEntries(entries) as DemoTables
}
