import { existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { callOnFile } from './command-line.ts'

/** Names the folder in which one run of the tests keeps the collections that its tests copy. */
const TEMPLATES_FOLDER = 'TEMPLATES_FOLDER'

/** Makes the folder of templates for a run, unless a run around this one has made it. Answers what removes it. */
export function makeTemplatesFolder(): () => void {
  if (process.env[TEMPLATES_FOLDER] !== undefined) return () => {}
  const folder = mkdtempSync(join(tmpdir(), 'drawer-templates-'))
  process.env[TEMPLATES_FOLDER] = folder
  return () => rmSync(folder, { recursive: true, force: true })
}

/** The folder in which this run keeps what its tests copy. */
export function templatesFolder(): string {
  const folder = process.env[TEMPLATES_FOLDER]
  if (folder === undefined) throw new Error('No folder for templates: the runner makes one before the tests')
  return folder
}

/** The collection of a name that tests copy, made where no test of this run has made it yet. */
export async function templateOf(name: string, make: (file: string) => Promise<void>): Promise<string> {
  const folder = templatesFolder()
  const template = join(folder, `${encodeURIComponent(name)}.drawer`)
  if (existsSync(template)) return template
  // Made beside and renamed, since another worker may be making the same one.
  const beside = mkdtempSync(join(folder, 'making-'))
  await make(join(beside, 'made.drawer'))
  renameSync(join(beside, 'made.drawer'), template)
  rmSync(beside, { recursive: true, force: true })
  return template
}

/** The demonstration as the app makes it. */
export function demoTemplate(): Promise<string> {
  return templateOf('demo', async (file) => {
    await callOnFile(file, 'collection.open-demo', {})
  })
}
