import { spawn } from 'node:child_process'
import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** One bundle: what it is made of, the file that tells when it was made, and how it is made. */
interface Bundle {
  readonly sources: readonly string[]
  readonly made: string
  readonly config: string
}

const PAGES: Bundle = {
  sources: ['renderer', 'db/contract', 'db/domain', 'vite.config.ts', 'package.json'],
  made: 'dist/renderer/index.html',
  config: 'vite.config.ts',
}
const MAIN: Bundle = {
  sources: ['electron', 'db', 'demo-data', 'vite.main.config.ts', 'package.json'],
  made: 'dist/app/electron/main/main.mjs',
  config: 'vite.main.config.ts',
}
const PRELOAD: Bundle = {
  sources: ['electron/preload', 'vite.preload.config.ts', 'package.json'],
  made: 'dist/app/electron/preload/preload.cjs',
  config: 'vite.preload.config.ts',
}

/**
 * Builds what is missing or older than its sources: the pages, and for Electron its two bundles too.
 *
 * Throws with the builder's own words where a build fails.
 */
export async function buildIfNeeded(projectFolder: string, shell: 'loopback' | 'electron'): Promise<void> {
  const bundles = shell === 'electron' ? [PAGES, MAIN, PRELOAD] : [PAGES]
  for (const bundle of bundles) {
    if (isFresh(projectFolder, bundle)) continue
    console.log(`Building ${bundle.made} …`)
    await build(projectFolder, bundle.config)
  }
}

function isFresh(projectFolder: string, { made, sources }: Bundle): boolean {
  const madeAt = statSync(join(projectFolder, made), { throwIfNoEntry: false })?.mtimeMs ?? 0
  return sources.every((source) => newest(join(projectFolder, source)) <= madeAt)
}

/** When the newest file of a folder, or the file itself, was written. */
function newest(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false })
  if (found === undefined) return 0
  if (!found.isDirectory()) return found.mtimeMs
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))))
}

function build(projectFolder: string, config: string): Promise<void> {
  const vite = join(projectFolder, 'node_modules', 'vite', 'bin', 'vite.js')
  const args = [vite, 'build', '--config', config, '--logLevel', 'warn']
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd: projectFolder, stdio: ['ignore', 'ignore', 'pipe'] })
    let said = ''
    child.stderr.on('data', (part: Buffer) => {
      said += part.toString('utf8')
    })
    child.once('error', reject)
    child.once('exit', (code) => (code === 0 ? resolve() : reject(new Error(`The build failed.\n${said}`))))
  })
}
