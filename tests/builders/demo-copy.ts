import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { demoTemplate } from '../support/templates.ts'

/** A copy of the demonstration's file in a folder of its own, for one test to read and write. */
export async function demoCopy(): Promise<{ readonly file: string; remove(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-demo-'))
  const file = join(folder, 'demo.drawer')
  copyFileSync(await demoTemplate(), file)
  return { file, remove: () => rmSync(folder, { recursive: true, force: true }) }
}
