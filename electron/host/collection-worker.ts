import { parentPort, workerData } from 'node:worker_threads'
import { contract, isOperationName } from '../../db/contract/contract.ts'
import { answerCall } from './answer-call.ts'
import { CollectionHolder } from './collection-holder.ts'
import { ForecastRefresher } from './forecast-refresher.ts'
import { logFile } from './log.ts'
import { traceOf } from './problem-of.ts'
import { Quiet } from './quiet.ts'
import { ReaderAhead } from './reader-ahead.ts'
import { realHands } from './real-hands.ts'
import type { FromWorker, ToWorker, WorkerStart } from './worker-messages.ts'

// The thread that owns the collection: no sum, however long, holds up a window or the listener.
const start = workerData as WorkerStart
const log = logFile(start.folder, () => new Date())
const holder = new CollectionHolder(start.folder, realHands)
const quiet = new Quiet()
const ahead = new ReaderAhead(() => holder.readAhead(), quiet, log)
const refresher = new ForecastRefresher(holder, quiet, log, () => ahead.wake())

function tell(message: FromWorker): void {
  parentPort?.postMessage(message)
}

/** Whether a call may leave forecasts to be worked out. */
function leavesForecasts(name: unknown): boolean {
  if (typeof name !== 'string' || !isOperationName(name)) return false
  return contract[name].access === 'writes' || name === 'forecast.hold'
}

async function obey(message: ToWorker): Promise<void> {
  if (message.kind === 'call') {
    quiet.heard()
    const answer = await answerCall(holder, message.name, message.input, log)
    tell({ kind: 'answer', id: message.id, answer })
    if (answer.ok && leavesForecasts(message.name)) refresher.wake()
    return
  }
  await refresher.stop()
  await ahead.stop()
  await holder.close()
  parentPort?.close()
}

parentPort?.on('message', obey)
tell({ kind: 'opened', problem: await holder.openFirst(start.file) })
ahead.wake()
refresher.wake()

// A backup while the app is open: soon after the start, and again in a long day. It waits until the window stands.
const FIRST_BACKUP_MS = 5_000
const BACKUPS_EVERY_MS = 4 * 3_600_000
const backUp = () => holder.backUpByItself().catch((thrown: unknown) => log(`backup ${traceOf(thrown)}`))
setTimeout(backUp, FIRST_BACKUP_MS).unref()
setInterval(backUp, BACKUPS_EVERY_MS).unref()
