import { randomUUID } from 'node:crypto'
import { text } from 'node:stream/consumers'
import { contract, isOperationName } from '../../db/contract/contract.ts'
import type { Answer, Problem } from '../../db/contract/problem.ts'
import { problem } from '../../db/contract/refusal.ts'
import { isMessage, message } from '../../db/messages/message.ts'
import { tellAll } from '../../db/messages/tell.ts'
import { textsOf, UNTIL_OPEN } from '../../db/messages/texts-of.ts'
import { answerCall } from '../host/answer-call.ts'
import { keepFilesPrivate } from '../host/collections-folder.ts'
import { toldBySystem } from '../host/system-texts.ts'
import { listOperations } from './list-operations.ts'
import { OneCollection } from './one-collection.ts'
import { howToGiveJson, type Request, readRequest, USAGE } from './read-request.ts'

type Call = Extract<Request, { kind: 'call' }>

/** Runs what the command line asks and answers the exit code: 0 done, 1 a problem, 2 not understood. */
async function main(args: readonly string[]): Promise<number> {
  const request = readRequest(args, calledFrom())
  if (request.kind === 'not-understood') {
    const { why } = request
    console.error(`${isMessage(why) ? await toldBySystem(why) : why}\n\n${USAGE}`)
    return 2
  }
  if (request.kind === 'list') {
    print(listOperations())
    return 0
  }
  keepFilesPrivate()
  const answer = await answerTo(request)
  print(answer.ok ? answer.value : answer.problem)
  return answer.ok ? 0 : 1
}

async function answerTo({ file, operation, json, language }: Call): Promise<Answer<unknown>> {
  let input: unknown
  try {
    input = JSON.parse(json === '-' ? await text(process.stdin) : json)
  } catch {
    const todo = howToGiveJson(process.platform)
    const { say } = await textsOf(UNTIL_OPEN, language)
    const why = problem('bad-request', message('problem.not-json'), { todo })
    return { ok: false, problem: tellAll(why, say) as Problem }
  }
  // The services load the database library, which a list of operations does without.
  const { realBackend } = await import('../host/real-backend.ts')
  const runner = new OneCollection(file, realBackend)
  return answerCall(runner, operation, withKey(operation, input), (line) => console.error(line), language)
}

/** A script that names no key gets one for this call alone: calling again then acts again. */
function withKey(operation: string, input: unknown): unknown {
  const writes = isOperationName(operation) && contract[operation].access === 'writes'
  if (!writes || typeof input !== 'object' || input === null || Array.isArray(input)) return input
  return { key: randomUUID(), ...input }
}

/** npm changes to the project's folder; file names are meant from where it was called. */
function calledFrom(): string {
  return process.env['npm_lifecycle_event'] === 'call'
    ? (process.env['INIT_CWD'] ?? process.cwd())
    : process.cwd()
}

function print(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`)
}

// Whoever reads the answer may stop reading, as head does.
process.stdout.on('error', (thrown: NodeJS.ErrnoException) => {
  if (thrown.code !== 'EPIPE') throw thrown
})
process.exitCode = await main(process.argv.slice(2))
