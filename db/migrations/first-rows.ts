import { createHash } from 'node:crypto'
import { fold } from '../domain/shared/fold.ts'
import { message } from '../messages/message.ts'
import { collection, entry } from '../schema/collection-tables.ts'
import { crop } from '../schema/reference-tables.ts'
import type { Sqlite } from './connection.ts'
import { readCropTable } from './crop-table.ts'
import type { Drizzle } from './over-drizzle.ts'

/** What a new collection starts with. */
export interface FirstFacts {
  readonly kind: 'demo' | 'own'
  readonly libraryName: string
  /** A checked pattern for accession numbers. */
  readonly accessionPattern: string
  /** The request key that this collection is started under. */
  readonly key: string
  readonly now: () => Date
  readonly newId: () => string
}

/** Three regrowings (FAO Genebank Standards 2014, 4.4.1, from memory), 0.8 emergence (a usual guess, from memory), 85 %. */
const DEFAULTS = {
  regrowingsKept: 3,
  emergence: 0.8,
  assurance: 0.9,
  viabilityThreshold: 0.85,
  viabilityThresholdOf: 'all-seeds',
} as const
/** Variety kept as it is, sown in the middle of April: common practice of a temperate garden, no source. */
const SEASON = { grade: 'maintenance', sowingDay: '04-15' } as const

/** Writes the settings, the crop table and the first entry, in one transaction. */
export function writeFirstRows(sqlite: Sqlite, db: Drizzle, facts: FirstFacts): void {
  const at = facts.now().toISOString()
  const write = sqlite.transaction(() => {
    db.insert(collection)
      .values({
        id: 1,
        uuid: facts.newId(),
        kind: facts.kind,
        libraryName: facts.libraryName,
        accessionPattern: facts.accessionPattern,
        ...DEFAULTS,
        ...SEASON,
        language: 'en',
        locale: 'en-GB',
        massUnits: 'metric',
        paper: 'a4',
        appearance: 'system',
        keeper: '',
        letterWords: '',
        backupFolder: '',
        backupLimitMb: 2_000,
        createdAt: at,
      })
      .run()
    for (const row of readCropTable()) {
      db.insert(crop)
        .values({ ...row, nameFolded: fold(row.commonName), ownReason: '' })
        .run()
    }
    db.insert(entry)
      .values({
        key: facts.key,
        operation: 'collection.create',
        inputDigest: createHash('sha256').update(facts.libraryName).digest('hex'),
        answer: '{}',
        said: JSON.stringify(message('collection.started', { name: facts.libraryName })),
        recordedAt: at,
      })
      .run()
  })
  write.immediate()
}
