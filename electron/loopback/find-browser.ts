import { accessSync, constants, statSync } from 'node:fs'
import { homedir } from 'node:os'
import { delimiter, join } from 'node:path'

/** The machine that a browser is looked for on. */
export interface Machine {
  readonly platform: NodeJS.Platform
  readonly environment: NodeJS.ProcessEnv
  readonly home: string
  readonly isProgram: (file: string) => boolean
}

export const thisMachine: Machine = {
  platform: process.platform,
  environment: process.env,
  home: homedir(),
  isProgram,
}

const LINUX_NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
  'brave-browser',
  'vivaldi-stable',
]
const LINUX_FOLDERS = [
  '/usr/bin',
  '/usr/local/bin',
  '/snap/bin',
  '/opt/google/chrome',
  '/var/lib/flatpak/exports/bin',
]
const MAC_NAMES = ['Google Chrome', 'Chromium', 'Microsoft Edge', 'Brave Browser', 'Vivaldi']
const WINDOWS_PLACES = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['BraveSoftware', 'Brave-Browser', 'Application', 'brave.exe'],
]

/**
 * Finds a browser of Chromium's kind: the one that COMMON_DRAWER_BROWSER names, else the first in the known places.
 *
 * Null where there is none, and where the variable names something that is no program: nothing else is then guessed.
 */
export function findBrowser(machine: Machine = thisMachine): string | null {
  const named = machine.environment['COMMON_DRAWER_BROWSER']
  if (named !== undefined && named !== '') return machine.isProgram(named) ? named : null
  return knownPlaces(machine).find((file) => machine.isProgram(file)) ?? null
}

function knownPlaces({ platform, environment, home }: Machine): readonly string[] {
  if (platform === 'darwin') {
    const folders = ['/Applications', join(home, 'Applications')]
    return folders.flatMap((folder) =>
      MAC_NAMES.map((name) => join(folder, `${name}.app`, 'Contents', 'MacOS', name)),
    )
  }
  if (platform === 'win32') {
    const roots = ['ProgramFiles', 'ProgramFiles(x86)', 'LOCALAPPDATA'].map((name) => environment[name])
    return roots.flatMap((root) =>
      root === undefined ? [] : WINDOWS_PLACES.map((parts) => join(root, ...parts)),
    )
  }
  const path = (environment['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '')
  const folders = [...new Set([...LINUX_FOLDERS, ...path])]
  return LINUX_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)))
}

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK)
    return statSync(file).isFile()
  } catch {
    return false
  }
}
