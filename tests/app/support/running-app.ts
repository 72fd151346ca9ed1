import { type ChildProcess, spawn } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { contract, type OperationName, type Value } from '../../../db/contract/contract.ts'
import type { Answer } from '../../../db/contract/problem.ts'
import { FIRST_OF_ALL, PROJECT_FOLDER } from '../../support/command-line.ts'
import type { FromHost, ToHost } from './host-process.ts'

/** The app at work on a folder of its own. */
export interface RunningApp {
  readonly folder: string
  /** The address with the secret of this run. */
  readonly address: string
  /** Asks the host itself, beside the page. Throws when the operation is refused. */
  call<N extends OperationName>(name: N, input: object): Promise<Value<N>>
  /** Ends it as Ctrl+C does, and gives the exit code. */
  end(): Promise<number | null>
}

/** The app as `npm start -- --no-window` runs it. */
export interface StartedApp extends RunningApp {
  readonly processId: number
  /** Ends it as a power cut would. */
  kill(): Promise<void>
}

/** A process that serves one folder after the other. */
export interface HostProcess {
  serve(folder: string): Promise<RunningApp>
  stop(): Promise<void>
}

/** Starts a process that serves folders, so that what the host loads is loaded once. */
export function startHostProcess(): HostProcess {
  const program = join(PROJECT_FOLDER, 'tests', 'app', 'support', 'host-process.ts')
  const child = spawn(process.execPath, [...FIRST_OF_ALL, program], {
    cwd: PROJECT_FOLDER,
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  })
  const ended = new Promise<number | null>((resolve) => {
    child.once('exit', (code) => resolve(code))
  })
  const ask = (message: ToHost) =>
    new Promise<FromHost>((resolve, reject) => {
      const gone = () => reject(new Error('The process that serves the tests ended'))
      child.once('exit', gone)
      child.once('message', (answer: FromHost) => {
        child.off('exit', gone)
        resolve(answer)
      })
      child.send(message)
    })
  return {
    async serve(folder) {
      const answer = await ask({ kind: 'serve', folder })
      if (answer.kind !== 'serving') throw new Error('The folder was not served')
      const { address } = answer
      return {
        folder,
        address,
        call: (name, input) => callAt(address, name, input),
        end: async () => ((await ask({ kind: 'end' })).kind === 'ended' ? 0 : null),
      }
    },
    async stop() {
      child.disconnect()
      await ended
    },
  }
}

export async function startApp(folder: string, more: readonly string[] = []): Promise<StartedApp> {
  const program = join(PROJECT_FOLDER, 'electron', 'loopback', 'start.ts')
  const args = [...FIRST_OF_ALL, program, '--no-window', '--folder', folder, ...more]
  const child = spawn(process.execPath, args, {
    cwd: PROJECT_FOLDER,
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const ended = new Promise<number | null>((resolve) => {
    child.once('exit', (code) => resolve(code))
  })
  const address = await addressOf(child)
  return {
    folder,
    processId: child.pid ?? 0,
    address,
    call: (name, input) => callAt(address, name, input),
    end() {
      child.kill('SIGTERM')
      return ended
    },
    async kill() {
      child.kill('SIGKILL')
      await ended
    },
  }
}

function addressOf(child: ChildProcess): Promise<string> {
  let said = ''
  return new Promise((resolve, reject) => {
    const listen = (part: Buffer) => {
      said += part.toString('utf8')
      const found = /http:\/\/127\.0\.0\.1:\d+\/#secret=[\w-]+/.exec(said)?.[0]
      if (found !== undefined) resolve(found)
    }
    child.stdout?.on('data', listen)
    child.stderr?.on('data', listen)
    child.once('exit', (code) => reject(new Error(`The app ended with ${code} and said: ${said}`)))
  })
}

async function callAt<N extends OperationName>(
  address: string,
  operation: N,
  input: object,
): Promise<Value<N>> {
  const { origin, hash } = new URL(address)
  const withKey = contract[operation].access === 'writes' ? { key: randomUUID(), ...input } : input
  const response = await fetch(`${origin}/call`, {
    method: 'POST',
    headers: {
      Origin: origin,
      'Content-Type': 'application/json',
      'X-Drawer-Secret': hash.replace('#secret=', ''),
    },
    body: JSON.stringify({ operation, input: withKey }),
  })
  const answer = (await response.json()) as Answer<Value<N>>
  if (!answer.ok) throw new Error(`${operation} was refused: ${answer.problem.sentence}`)
  return answer.value
}
