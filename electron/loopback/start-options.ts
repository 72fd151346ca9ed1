import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { collectionsFolder } from '../host/collections-folder.ts'

/** What the app is started with. */
export interface StartOptions {
  /** Where collections live. */
  readonly folder: string
  /** The collection to open, or null for the one open last. */
  readonly file: string | null
  readonly window: boolean
  readonly electron: boolean
}

export const USAGE = `npm start                          opens the collection that was open last, or the demonstration
npm start -- --collection FILE     opens that collection
npm start -- --folder FOLDER       keeps collections in that folder
npm start -- --browser             uses a browser window even where Electron is installed
npm start -- --no-window           prints the address and serves it, for a machine without a display`

/** Reads the words after `npm start --`; null where they are not understood. */
export function readStartOptions(
  args: readonly string[],
  environment: NodeJS.ProcessEnv,
): StartOptions | 'help' | null {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        collection: { type: 'string' },
        folder: { type: 'string' },
        browser: { type: 'boolean', default: false },
        'no-window': { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    })
    if (values.help) return 'help'
    return {
      folder: collectionsFolder(values.folder, environment),
      file: values.collection === undefined ? null : resolve(values.collection),
      window: !values['no-window'],
      electron: !values.browser && !values['no-window'],
    }
  } catch {
    return null
  }
}
