import { spawn } from 'node:child_process'
import { PROJECT_FOLDER } from './command-line.ts'

export interface ScriptCall {
  readonly args?: readonly string[]
  readonly environment?: NodeJS.ProcessEnv
  /** Keeps what it prints until it has ended, so that it does not stand between the lines of another. */
  readonly printAtEnd?: boolean
  /** Ends it after so many milliseconds. */
  readonly limitMs?: number
}

export type ScriptEnd = 'passed' | 'failed' | 'out of time'

/** Runs an npm script, as a person would, and answers how it ended. */
export function npm(script: string, call: ScriptCall = {}): Promise<ScriptEnd> {
  const program = process.env['npm_execpath']
  if (program === undefined) throw new Error('Run the tests by npm test.')
  const { args = [], environment = {}, printAtEnd = false, limitMs } = call
  const title = `\n— npm run ${[script, ...args].join(' ')}`
  if (!printAtEnd) console.log(title)
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, 'run', '--silent', script, '--', ...args], {
      cwd: PROJECT_FOLDER,
      stdio: printAtEnd ? ['ignore', 'pipe', 'pipe'] : 'inherit',
      env: { ...process.env, ...environment },
      // A group of its own: what the script started ends with it when its time is up.
      detached: limitMs !== undefined,
    })
    let isOver = false
    const limit =
      limitMs === undefined
        ? undefined
        : setTimeout(() => {
            isOver = true
            if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL')
          }, limitMs)
    const printed: Buffer[] = []
    child.stdout?.on('data', (part: Buffer) => printed.push(part))
    child.stderr?.on('data', (part: Buffer) => printed.push(part))
    child.once('error', () => resolve('failed'))
    child.once('close', (code) => {
      clearTimeout(limit)
      if (printAtEnd) console.log(`${title}\n${Buffer.concat(printed).toString('utf8').trimEnd()}`)
      if (code === 0) resolve('passed')
      else resolve(isOver ? 'out of time' : 'failed')
    })
  })
}
