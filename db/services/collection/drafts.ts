import { desc, eq } from 'drizzle-orm'
import { draft } from '../../schema/collection-tables.ts'
import type { Reads } from '../book/context.ts'

/** Keeps a draft in place of the one of its id; an empty text drops it. */
export const saveDraft: Reads<'draft.save'> = (reading, input) => {
  const keptAt = reading.now.toISOString()
  if (input.text === '') {
    reading.db.delete(draft).where(eq(draft.id, input.draftId)).run()
    return { keptAt }
  }
  const row = { id: input.draftId, kind: input.kind, text: input.text, keptAt }
  reading.db.insert(draft).values(row).onConflictDoUpdate({ target: draft.id, set: row }).run()
  return { keptAt }
}

/** The drafts of a kind, latest first. */
export const listDrafts: Reads<'draft.list'> = (reading, input) => {
  const opened = reading.collection.openedAt.toISOString()
  const rows = reading.db
    .select()
    .from(draft)
    .where(eq(draft.kind, input.kind))
    .orderBy(desc(draft.keptAt))
    .all()
  return {
    drafts: rows.map(({ id, text, keptAt }) => ({ draftId: id, text, keptAt, earlierRun: keptAt < opened })),
  }
}
