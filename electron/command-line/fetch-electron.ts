import { spawn } from 'node:child_process'

export type Fetched = 'fetched' | 'too-slow' | 'failed'

/** Runs Electron's own installer, for so long and no longer. It keeps nothing that is not whole. */
export function fetchElectron(installer: string, limitMs: number): Promise<Fetched> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [installer], { stdio: ['ignore', 'ignore', 'ignore'] })
    let tooSlow = false
    const limit = setTimeout(() => {
      tooSlow = true
      child.kill('SIGKILL')
    }, limitMs)
    child.once('error', () => resolve('failed'))
    child.once('exit', (code) => {
      clearTimeout(limit)
      resolve(tooSlow ? 'too-slow' : code === 0 ? 'fetched' : 'failed')
    })
  })
}
