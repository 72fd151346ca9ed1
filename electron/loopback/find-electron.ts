import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Finds Electron's program without loading its package, which would start a download where it is missing.
 *
 * Null where it is not on this machine.
 */
export function findElectron(projectFolder: string, environment: NodeJS.ProcessEnv): string | null {
  const packageFolder = join(projectFolder, 'node_modules', 'electron')
  const elsewhere = environment['ELECTRON_OVERRIDE_DIST_PATH']
  let name: string
  try {
    name = readFileSync(join(packageFolder, 'path.txt'), 'utf8').trim()
  } catch {
    if (elsewhere === undefined) return null
    name = process.platform === 'win32' ? 'electron.exe' : 'electron'
  }
  const program = join(elsewhere ?? join(packageFolder, 'dist'), name)
  return name !== '' && existsSync(program) ? program : null
}
