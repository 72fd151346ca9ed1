import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { yearOf } from '../../domain/dates/iso-date.ts'
import { type NumberPattern, printNumber, readPattern } from '../../domain/numbers/pattern.ts'
import { fold } from '../../domain/shared/fold.ts'
import { message } from '../../messages/message.ts'
import { rowWith } from '../../queries/rows.ts'
import { collection } from '../../schema/collection-tables.ts'
import type { Reading, Writes } from './context.ts'

/** The collection's one row of settings. */
export function settingsOf({ sqlite }: Reading): typeof collection.$inferSelect {
  const row = rowWith(sqlite, collection, { id: 1 })
  if (row === undefined) throw new Error('The collection has no settings row')
  return row
}

/** An accession pattern that was checked, or a refusal that says what is wrong with it. */
export function patternOrRefuse(typed: string, field: string): NumberPattern {
  const read = readPattern(typed)
  return read.kind === 'pattern' ? read.pattern : refuse('pattern-unfit', read.because, { field })
}

/** Changes settings; what is left out stays. Refuses a number pattern that cannot be counted. */
export const changeSettings: Writes<'settings.change'> = (writing, input) => {
  const { accessionPattern, ...rest } = input.settings
  const changes = Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined))
  if (accessionPattern !== undefined) {
    changes['accessionPattern'] = patternOrRefuse(accessionPattern, 'settings.accessionPattern')
  }
  if (rest.maskedNames !== undefined) {
    changes['maskedNames'] = [...new Set(rest.maskedNames.map(fold).filter((name) => name !== ''))]
  }
  if (Object.keys(changes).length === 0)
    refuse('nothing-to-change', message('settings.nothing-to-change'), { field: 'settings' })
  writing.db.update(collection).set(changes).where(eq(collection.id, 1)).run()
  return { ...settingsShown(writing), said: message('settings.changed'), undoable: false }
}

/** The settings as the contract shows them, with the number that comes out of the pattern. */
export function settingsShown(
  reading: Reading,
): Pick<Result<'collection.get'>, 'settings' | 'patternExample'> {
  const { id, uuid, kind, createdAt, keeper, letterWords, backupFolder, backupLimitMb, ...settings } =
    settingsOf(reading)
  const example = printNumber(settings.accessionPattern as NumberPattern, yearOf(reading.today), 142)
  return { settings, patternExample: example }
}
