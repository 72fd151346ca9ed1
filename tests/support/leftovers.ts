import { execFileSync } from 'node:child_process'
import { chmodSync, mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync } from 'node:fs'
import { homedir, tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'

/** How things stood before a test run. */
export interface Before {
  /** A temporary folder for this run alone: whatever the tests leave in it is a leftover. */
  readonly temporary: string
  readonly changedFiles: string
  readonly home: readonly string[]
  readonly running: ReadonlySet<string>
}

/** What the runners keep in the temporary folder for their next start, by how its name begins. */
const KEPT_BY_RUNNERS = [
  'playwright-transform-cache',
  'node-compile-cache',
  'org.chromium.',
  '.org.chromium.',
]

/** Notes how things are before the tests, and makes them a temporary folder of their own. */
export function lookBefore(projectFolder: string): Before {
  const temporary = mkdtempSync(join(tmpdir(), 'drawer-tests-'))
  // A test works as another user for a while, who must find its files here as in any temporary folder.
  chmodSync(temporary, 0o755)
  return {
    temporary,
    changedFiles: changedFiles(projectFolder),
    home: readdirSync(homedir()),
    running: new Set(processesIn(projectFolder)),
  }
}

/** How long a process that was told to end may take, milliseconds. */
const PATIENCE_MS = 5_000
const LOOK_AGAIN_MS = 100

/** What the tests left behind or changed outside their temporary folder, in sentences. Removes that folder. */
export async function leftovers(
  before: Before,
  projectFolder: string,
  patienceMs = PATIENCE_MS,
): Promise<readonly string[]> {
  const late = () => processesIn(projectFolder).filter((found) => !before.running.has(found))
  for (let waited = 0; waited < patienceMs && late().length > 0; waited += LOOK_AGAIN_MS)
    await setTimeout(LOOK_AGAIN_MS)
  const left = readdirSync(before.temporary).filter(
    (name) => !KEPT_BY_RUNNERS.some((kept) => name.startsWith(kept)),
  )
  rmSync(before.temporary, { recursive: true, force: true })
  const changed = changedFiles(projectFolder)
  return [
    ...left.map((name) => `${name} was left in the temporary folder.`),
    ...late().map((found) => `A process still runs, and may hold a port: ${found}`),
    ...readdirSync(homedir())
      .filter((name) => !name.startsWith('.') && !before.home.includes(name))
      .map((name) => `${name} was put into the home folder.`),
    ...(changed === before.changedFiles ? [] : [`Files of the project were changed:\n${changed}`]),
  ]
}

/** What differs from the last commit, as git says it; '' where this is no repository. */
function changedFiles(projectFolder: string): string {
  try {
    return execFileSync('git', ['status', '--porcelain'], {
      cwd: projectFolder,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    })
  } catch {
    return ''
  }
}

/** The processes that work in a folder, this one left out, each by its number and command. Linux tells; others do not. */
function processesIn(folder: string): readonly string[] {
  if (process.platform !== 'linux') return []
  return readdirSync('/proc').flatMap((pid) => {
    if (!/^\d+$/.test(pid) || pid === String(process.pid)) return []
    try {
      if (!`${readlinkSync(`/proc/${pid}/cwd`)}/`.startsWith(join(folder, '/'))) return []
      return [`${pid} ${readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ').trim()}`]
    } catch {
      // It ended while it was looked at, or is somebody else's.
      return []
    }
  })
}
