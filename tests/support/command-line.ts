import { execFile } from 'node:child_process'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { OperationName, Value } from '../../db/contract/contract.ts'

export const PROJECT_FOLDER = fileURLToPath(new URL('../../', import.meta.url))

/** What every npm script loads first; it keeps what Node makes of the TypeScript, so that later starts are quick. */
export const FIRST_OF_ALL = [
  '--import',
  new URL('../../electron/check-node.mjs', import.meta.url).href,
] as const

/** Runs an operation on a file by the command line, as a script would. Rejects with the problem when it is refused. */
export function callOnFile<N extends OperationName>(file: string, name: N, input: object): Promise<Value<N>> {
  const program = join(PROJECT_FOLDER, 'electron', 'command-line', 'call.ts')
  const args = [...FIRST_OF_ALL, program, '--collection', file, name, JSON.stringify(input)]
  return new Promise((resolve, reject) => {
    execFile(process.execPath, args, { maxBuffer: 64 * 1024 * 1024 }, (failure, stdout, stderr) => {
      if (failure === null) resolve(JSON.parse(stdout) as Value<N>)
      else reject(new Error(`${name} was refused: ${stdout}${stderr}`))
    })
  })
}
