import { parentPort, workerData } from 'node:worker_threads'
import { ServedCollection } from './served-collection.ts'
import type { FromWorker, ToWorker, WorkerStart } from './worker-messages.ts'

// The thread that owns the collection: no sum, however long, holds up a window or the listener.
const collection = new ServedCollection(workerData as WorkerStart)

function tell(message: FromWorker): void {
  parentPort?.postMessage(message)
}

async function obey(message: ToWorker): Promise<void> {
  if (message.kind === 'call') {
    tell({
      kind: 'answer',
      id: message.id,
      answer: await collection.call(message.name, message.input, message.language),
    })
    return
  }
  await collection.close()
  parentPort?.close()
}

parentPort?.on('message', obey)
tell({ kind: 'opened', problem: await collection.open() })
