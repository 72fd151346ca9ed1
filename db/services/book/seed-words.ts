import { eq } from 'drizzle-orm'
import { cautionTold } from '../../domain/cautions/caution-text.ts'
import { handlingTold } from '../../domain/cautions/handling.ts'
import { cautionsInForce } from '../../domain/cautions/inheritance.ts'
import { communityLabelTold, limitsInShort } from '../../domain/terms/gift-limits.ts'
import type { Message } from '../../messages/message.ts'
import { cautionHistory } from '../../queries/caution-rows.ts'
import { limitsOfLots } from '../../queries/gift-limits.ts'
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

/**
 * What whoever gets seed of some lots must read: who may have it, then what to be careful about; a sentence or two each.
 *
 * `room`: on a small label, a community's own label is left to where there is room for it.
 */
export function mustBeRead(
  reading: Reading,
  lotIds: readonly number[],
  room: 'little' | 'enough' = 'enough',
): Message[] {
  const limits = limitsOfLots(reading.sqlite, lotIds)
  return [
    ...limits.flatMap(limitsInShort),
    ...cautionsTold(reading, lotIds).map(({ text }) => text),
    ...(room === 'enough' ? limits.flatMap(communityLabelTold) : []),
  ]
}

/** What must be minded with the seed of a lot where it is tested: its cautions, and how it is handled. */
export function testCautions(reading: Reading, lotId: number): Message[] {
  const told = cautionsTold(reading, [lotId])
  const kinds = told.map(({ caution }) => caution)
  return [...told.map(({ text }) => text), ...handlingTold(kinds, 'test')]
}
