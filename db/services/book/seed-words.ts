import { eq } from 'drizzle-orm'
import { cautionTold } from '../../domain/cautions/caution-text.ts'
import { handlingTold } from '../../domain/cautions/handling.ts'
import { cautionsInForce } from '../../domain/cautions/inheritance.ts'
import type { Message } from '../../messages/message.ts'
import { cautionHistory } from '../../queries/caution-rows.ts'
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

/** The cautions that hold for the seed of some lots, with what they tell, each once. */
export function cautionsTold(reading: Reading, lotIds: readonly number[]) {
  const history = cautionHistory(reading.sqlite, lotIds)
  const told = lotIds
    .flatMap((lotId) => cautionsInForce(history, lotId))
    .map(({ caution, note }) => ({ caution, note, text: cautionTold(caution, note) }))
  return [...new Map(told.map((caution) => [JSON.stringify(caution.text), caution])).values()]
}

/** What must be minded with the seed of a lot where it is tested: its cautions, and how it is handled. */
export function testCautions(reading: Reading, lotId: number): Message[] {
  const told = cautionsTold(reading, [lotId])
  const kinds = told.map(({ caution }) => caution)
  return [...told.map(({ text }) => text), ...handlingTold(kinds, 'test')]
}
