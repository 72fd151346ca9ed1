import { eq } from 'drizzle-orm'
import { fold } from '../../domain/shared/fold.ts'
import { indexVariety } from '../../queries/search-words.ts'
import { crop, cropChange, variety } from '../../schema/reference-tables.ts'
import { refuseIfChangedLater } from '../book/changed-later.ts'
import type { Writing } from '../book/context.ts'

type CropRow = typeof crop.$inferSelect

/** What the keeper may say of a crop of their own and correct, by its column, with the last part of the id of its message. */
export const OWN_CROP_FACTS = {
  commonName: 'name',
  species: 'botanical-name',
  family: 'family',
  packetSeeds: 'usual-packet',
  hundredSeedWeightUg: 'weight',
  countedUnit: 'counted',
  keepsMonths: 'keeps-months',
  matingSystem: 'mating-system',
  pollination: 'pollination',
  lifeCycle: 'life-cycle',
  isolationHomeM: 'isolation-home',
  isolationStrictM: 'isolation-strict',
  laterSowingDays: 'later-days',
  bedArea: 'bed',
  seedExtraction: 'extraction',
  viabilityConstants: 'constants',
} as const satisfies Partial<Record<keyof CropRow, string>>

/** What may be changed again; each name is a column, so that it can be put back as it was. */
const CHANGEABLE = [
  ...(Object.keys(OWN_CROP_FACTS) as (keyof typeof OWN_CROP_FACTS)[]),
  'ownPlants',
  'ownThreshold',
  'ownDaysToSeed',
  'ownReason',
] as const satisfies readonly (keyof CropRow)[]
type CropField = (typeof CHANGEABLE)[number]
export type CropChange = { readonly [F in CropField]?: CropRow[F] | undefined }

/** Changes a crop and keeps what was before, under the entry being written. Answers the fields that changed. */
export function changeCrop(writing: Writing, row: CropRow, after: CropChange): CropField[] {
  const changed = CHANGEABLE.filter((field) => after[field] !== undefined && after[field] !== row[field])
  for (const field of changed) {
    const change = { before: JSON.stringify(row[field]), after: JSON.stringify(after[field]) }
    writing.db
      .insert(cropChange)
      .values({ cropId: row.id, field, ...change, entryId: writing.entryId })
      .run()
  }
  if (changed.length > 0)
    putState(writing, row.id, Object.fromEntries(changed.map((field) => [field, after[field]])))
  return changed
}

/** Puts crops back to what they were before an entry. Refused when a later entry changed the same thing again. */
export function restoreCrops(writing: Writing, entryId: number): void {
  const changes = writing.db.select().from(cropChange).where(eq(cropChange.entryId, entryId)).all()
  for (const [cropId, fields] of Map.groupBy(changes, (change) => change.cropId)) {
    for (const change of fields) refuseIfChangedLater(writing, 'crop', change.cropId, change)
    const before = fields.map(({ field, before: json }) => [field, JSON.parse(json)])
    putState(writing, cropId, Object.fromEntries(before))
  }
}

/** Sets only what is named: a column that is set makes forecasts stale even where it stays the same. */
function putState(writing: Writing, cropId: string, state: CropChange): void {
  const { db, sqlite } = writing
  const folded = state.commonName === undefined ? {} : { nameFolded: fold(state.commonName) }
  db.update(crop)
    .set({ ...state, ...folded })
    .where(eq(crop.id, cropId))
    .run()
  if (state.commonName === undefined && state.species === undefined) return
  for (const { id } of db.select({ id: variety.id }).from(variety).where(eq(variety.cropId, cropId)).all())
    indexVariety(sqlite, id)
}
