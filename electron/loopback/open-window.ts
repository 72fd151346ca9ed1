import { type ChildProcess, spawn } from 'node:child_process'
import { basename, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Message, message } from '../../db/messages/message.ts'
import { findBrowser, type Machine } from './find-browser.ts'

/** How the app came before the keeper's eyes. */
export type Shown =
  | {
      readonly kind: 'app-window'
      readonly browser: string
      /** The browser's end: on a Mac it stays after its last window, and one that ran already ends this one at once. */
      readonly ended: Promise<void>
      /** Ends the browser that was started, where it still runs. */
      end(): void
    }
  | { readonly kind: 'browser-page' }
  | { readonly kind: 'address-only'; readonly because: Message | null }

/** A browser that fails within this time, milliseconds, showed no window. */
const MUST_LIVE_MS = 1_500

/** Opens the file that leads to the app, in a window of its own or in the default browser, or says why it cannot. */
export async function openWindow(opener: string, profileFolder: string, machine: Machine): Promise<Shown> {
  const address = pathToFileURL(opener).href
  if (!hasDisplay(machine)) return { kind: 'address-only', because: message('start.no-display') }
  const browser = findBrowser(machine)
  if (browser !== null) {
    const child = spawn(browser, appWindowArguments(address, profileFolder, isRoot()), { stdio: 'ignore' })
    const ended = endOf(child)
    if ((await Promise.race([ended, after(MUST_LIVE_MS)])) !== 'failed') {
      child.unref()
      return {
        kind: 'app-window',
        browser: basename(browser),
        ended: ended.then(() => {}),
        end: () => child.kill(),
      }
    }
  }
  const child = spawn(...defaultBrowser(address, machine.platform), { stdio: 'ignore' })
  const failed = (await Promise.race([endOf(child), after(MUST_LIVE_MS)])) === 'failed'
  child.unref()
  if (!failed) return { kind: 'browser-page' }
  return { kind: 'address-only', because: message('start.no-browser') }
}

/** What a Chromium is started with: one window without tabs, a profile of its own, no business with the network. */
export function appWindowArguments(
  address: string,
  profileFolder: string,
  asRoot: boolean,
): readonly string[] {
  return [
    `--app=${address}`,
    `--user-data-dir=${join(profileFolder, '.window')}`,
    '--window-size=1280,860',
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    // Chromium refuses to run as root with its sandbox on; --test-type hides the bar that warns of it.
    ...(asRoot ? ['--no-sandbox', '--test-type'] : []),
  ]
}

/** Whether the machine can show a window. */
export function hasDisplay({ platform, environment }: Machine): boolean {
  if (platform === 'darwin' || platform === 'win32') return true
  return Boolean(environment['DISPLAY'] || environment['WAYLAND_DISPLAY'])
}

/** Whether this runs as root, as which Chromium keeps no sandbox. */
export function isRoot(): boolean {
  return process.getuid?.() === 0
}

function defaultBrowser(address: string, platform: NodeJS.Platform): [command: string, args: string[]] {
  if (platform === 'darwin') return ['open', [address]]
  if (platform === 'win32') return ['rundll32', ['url.dll,FileProtocolHandler', address]]
  return ['xdg-open', [address]]
}

function endOf(child: ChildProcess): Promise<'ended' | 'failed'> {
  return new Promise((resolve) => {
    child.once('error', () => resolve('failed'))
    child.once('exit', (code) => resolve(code === 0 ? 'ended' : 'failed'))
  })
}

function after(ms: number): Promise<'alive'> {
  return new Promise((resolve) => {
    setTimeout(() => resolve('alive'), ms)
  })
}
