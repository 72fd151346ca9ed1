import { eq } from 'drizzle-orm'
import { cautionText, cautionTold, OF_THE_SEED } from '../../domain/cautions/caution-text.ts'
import { cautionRows } from '../../queries/caution-rows.ts'
import { varietySynonym } from '../../schema/reference-tables.ts'
import type { Reading } from './context.ts'

/** The other names of a variety. */
export function synonymsOf(reading: Reading, varietyId: number): string[] {
  return reading.db
    .select({ name: varietySynonym.name })
    .from(varietySynonym)
    .where(eq(varietySynonym.varietyId, varietyId))
    .all()
    .map(({ name }) => name)
}

/** The cautions that hold for the seed of some lots, with their plain text, each text once. */
export function cautionsOf(reading: Reading, lotIds: readonly number[]) {
  const rows = cautionRows(reading.sqlite, lotIds, OF_THE_SEED)
  const told = rows.map(({ caution, note }) => ({ caution, note, text: cautionText(caution, note) }))
  return [...new Map(told.map((caution) => [caution.text, caution])).values()]
}

/** The same, to be told in any language. */
export function cautionsTold(reading: Reading, lotIds: readonly number[]) {
  return cautionsOf(reading, lotIds).map(({ caution, note }) => ({
    caution,
    note,
    text: cautionTold(caution, note),
  }))
}
