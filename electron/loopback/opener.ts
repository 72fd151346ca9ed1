import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { writeSmallFile } from '../host/collections-folder.ts'
import { SECRET_HEADER } from './guard.ts'

const ADDRESS = /url=(http:\/\/127\.0\.0\.1:\d+)\/#secret=([\w-]+)/
/** So long a host that runs may take to say which file it has open, milliseconds. */
const ANSWERS_WITHIN_MS = 4_000

/**
 * Writes the file that leads a browser to the app, readable by its owner alone.
 *
 * The secret stands in it, not in the browser's command line, which every account of the computer can read.
 */
export async function writeOpener(file: string, address: string): Promise<void> {
  const page = `<!doctype html><meta charset="utf-8"><meta name="referrer" content="no-referrer"><title>Common Drawer</title>
<meta http-equiv="refresh" content="0; url=${address}"><p><a href="${address}">Open Common Drawer</a></p>
`
  await writeSmallFile(file, page)
}

/** The file that leads to the host of a folder; a host that runs beside it has one of its own. */
export function openerFile(folder: string, beside: boolean): string {
  return join(folder, beside ? `.open-window-${process.pid}.html` : '.open-window.html')
}

/** A host that another start of the app left running on the same folder. */
export interface RunningHost {
  /** The collection it has open; null where it has none, or is busy opening one. */
  readonly file: string | null
  /** Lets it go: until then it does not end for want of a page. */
  discard(): void
}

/** The host that runs on a folder already, by the file that opens its window; null where none answers. */
export async function findRunning(folder: string): Promise<RunningHost | null> {
  const [, origin, secret] = ADDRESS.exec(textOf(openerFile(folder, false))) ?? []
  if (origin === undefined || secret === undefined) return null
  const line = new AbortController()
  const tooLate = setTimeout(() => line.abort(), ANSWERS_WITHIN_MS)
  const ask = (path: string, body: string | null, signal: AbortSignal) =>
    fetch(`${origin}${path}`, {
      method: 'POST',
      headers: { Origin: origin, 'Content-Type': 'application/json', [SECRET_HEADER]: secret },
      body,
      signal,
    })
  try {
    const seen = await ask('/alive', null, line.signal)
    clearTimeout(tooLate)
    if (!seen.ok) return null
    const about = JSON.stringify({ operation: 'collection.get', input: {} })
    const said = await ask('/call', about, AbortSignal.timeout(ANSWERS_WITHIN_MS))
      .then((answer) => answer.json() as Promise<{ value?: { file?: string } }>)
      .catch(() => null)
    return { file: said?.value?.file ?? null, discard: () => line.abort() }
  } catch {
    clearTimeout(tooLate)
    line.abort()
    return null
  }
}

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return ''
  }
}
