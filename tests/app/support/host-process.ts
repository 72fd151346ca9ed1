import { join } from 'node:path'
import { ServedCollection } from '../../../electron/host/served-collection.ts'
import { type Serving, serve } from '../../../electron/loopback/serve.ts'
import { Visitors } from '../../../electron/loopback/visitors.ts'
import { PROJECT_FOLDER } from '../../support/command-line.ts'

// One host for all the app tests of a worker: what takes a second to load is loaded once, while each test has its own
// folder, file, port and secret. The start of the real program is tested where it matters (opening, faults, starting).

/** What a test asks of the process: to serve the collection of a folder, or to end what it serves. */
export type ToHost = { readonly kind: 'serve'; readonly folder: string } | { readonly kind: 'end' }
export type FromHost = { readonly kind: 'serving'; readonly address: string } | { readonly kind: 'ended' }

let served: { readonly collection: ServedCollection; readonly serving: Serving } | null = null

async function obey(message: ToHost): Promise<void> {
  if (message.kind === 'serve') {
    const collection = new ServedCollection({ folder: message.folder, file: null })
    const serving = await serve({
      host: collection,
      visitors: new Visitors(() => {}),
      pages: join(PROJECT_FOLDER, 'dist', 'renderer'),
      preferredPort: null,
    })
    served = { collection, serving }
    await collection.open()
    tell({ kind: 'serving', address: serving.address })
    return
  }
  await served?.serving.close()
  await served?.collection.close()
  served = null
  tell({ kind: 'ended' })
}

function tell(message: FromHost): void {
  process.send?.(message)
}

process.on('message', obey)
process.on('disconnect', () => process.exit())
