import { spawn } from 'node:child_process'
import { mkdtempSync, readdirSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { removeIfFree } from '../../db/migrations/held-files.ts'

export type Fetched = 'fetched' | 'too-slow' | 'failed'

const TOLD_EVERY_MS = 5_000

/**
 * Runs Electron's own installer, for so long and no longer. It keeps nothing that is not whole.
 *
 * `onProgress` hears every few seconds how many bytes have come: the installer keeps them in the temporary folder, which
 * here is one of its own.
 */
export async function fetchElectron(
  installer: string,
  limitMs: number,
  onProgress: (bytes: number) => void = () => {},
  toldEveryMs: number = TOLD_EVERY_MS,
): Promise<Fetched> {
  const folder = mkdtempSync(join(tmpdir(), 'common-drawer-fetch-'))
  const telling = setInterval(() => onProgress(bytesIn(folder)), toldEveryMs)
  try {
    return await runInstaller(installer, limitMs, folder)
  } finally {
    clearInterval(telling)
    removeIfFree(folder)
  }
}

function runInstaller(installer: string, limitMs: number, temporary: string): Promise<Fetched> {
  return new Promise((resolve) => {
    const env = { ...process.env, TMPDIR: temporary, TEMP: temporary, TMP: temporary }
    const child = spawn(process.execPath, [installer], { stdio: ['ignore', 'ignore', 'ignore'], env })
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

function bytesIn(folder: string): number {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  const sizes = files.map((file) => statSync(join(folder, file), { throwIfNoEntry: false }))
  return sizes.reduce((sum, found) => sum + (found?.isFile() ? found.size : 0), 0)
}
