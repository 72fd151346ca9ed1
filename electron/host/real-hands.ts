import { randomUUID } from 'node:crypto'
import { openCollection } from '../../db/migrations/open-file.ts'
import { runOperation } from '../../db/services/run-operation.ts'
import { startCollection } from '../../db/services/start-collection.ts'
import { makeDemoCollection } from '../../demo-data/load-demo.ts'
import type { Hands } from './collection-holder.ts'

const now = () => new Date()

/** The hands of the real app: the clock, the random source and the services. */
export const realHands: Hands = {
  open: (file) => openCollection(file, { access: 'write', now }),
  begin: (file, input) => startCollection(file, input, { now, newId: randomUUID }),
  makeDemo: makeDemoCollection,
  run: (collection, name, input) => runOperation(collection, name, input, now),
}
