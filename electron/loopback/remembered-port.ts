import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { toldBySystem } from '../host/system-texts.ts'
import { whyNotWritten } from './why-not-written.ts'

const FILE = '.last-port'

/** The port of the last run: a browser keeps what a page stores, such as an unfinished entry, by its port. */
export function rememberedPort(folder: string): number | null {
  try {
    const port = Number(readFileSync(join(folder, FILE), 'utf8'))
    return Number.isInteger(port) && port >= 1_024 && port <= 65_535 ? port : null
  } catch {
    return null
  }
}

/** Keeps the port for the next run. A folder that may not be written costs no more than a new port next time. */
export async function rememberPort(folder: string, port: number): Promise<void> {
  try {
    writeFileSync(join(folder, FILE), String(port))
  } catch (thrown) {
    console.log(await toldBySystem(whyNotWritten(thrown)))
  }
}
