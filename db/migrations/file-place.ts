import { execFileSync } from 'node:child_process'
import { realpathSync } from 'node:fs'
import { dirname } from 'node:path'

/** Folder names that file-synchronising services use. A hint, not proof: names seen on common systems, from memory. */
const SYNCED_FOLDERS: readonly RegExp[] = [
  /[\\/](?:dropbox(?: ?[(-][^\\/]*)?|onedrive[^\\/]*|google ?drive[^\\/]*|icloud ?drive|nextcloud|owncloud|syncthing|sync)[\\/]/i,
  /[\\/](?:proton ?drive[^\\/]*|p ?cloud ?(?:drive|sync)[^\\/]*|box(?:-box| sync)|mega|seafile)[\\/]/i,
  // What a Mac keeps for every such service, and the box folder that lies in a home folder by itself.
  /[\\/]library[\\/](?:cloudstorage|mobile documents)[\\/]/i,
  /[\\/](?:users|home)[\\/][^\\/]+[\\/]box[\\/]/i,
  // A drive letter or a mount of its own.
  /^[a-z]:[\\/](?:my drive|shared drives|meine ablage|geteilte ablagen|mon drive|drive partag[^\\/]*|mi unidad|unidades compartidas)[\\/]/i,
  /[\\/]gvfs[\\/]google-drive/i,
]

const NETWORK_FILE_SYSTEMS = /^(nfs|cifs|smb|afp|9p|fuse\.sshfs|davfs)/i
/** A folder of another computer, as Windows writes it; a drive letter that stands for one leads to it. */
const NETWORK_PATH = /^(?:\\\\\?\\UNC\\|\\\\(?![?.]\\)|\/\/)/i
/** What a Mac says a network disk is mounted from. */
const MOUNTED_FROM_NETWORK = /^(?:\/\/|[^/\s]+:\/|(?:smb|afp|https?):)/

/** What is asked of the system about where a file lies. */
export interface Disk {
  readonly platform: NodeJS.Platform
  /** The path behind links and drive letters. Throws where there is none. */
  readonly realPath: (path: string) => string
  /** What a program of the system prints. Throws where it cannot be run. */
  readonly ask: (program: string, ...args: readonly string[]) => string
}

const thisDisk: Disk = {
  platform: process.platform,
  realPath: realpathSync.native,
  ask: (program, ...args) =>
    execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'], timeout: 1_000 }),
}

/** Where a file lies in a synchronised or network folder, where SQLite cannot keep it safe; else null. */
export function inSyncedFolder(file: string, disk: Disk = thisDisk): 'copied' | 'network' | null {
  const paths = [file, realPathOf(file, disk)]
  if (paths.some((path) => SYNCED_FOLDERS.some((folder) => folder.test(path)))) return 'copied'
  if (paths.some((path) => NETWORK_PATH.test(path))) return 'network'
  return isNetworkFileSystem(file, disk) ? 'network' : null
}

function realPathOf(file: string, { realPath }: Disk): string {
  try {
    return realPath(file)
  } catch {
    return file
  }
}

function isNetworkFileSystem(file: string, { platform, ask }: Disk): boolean {
  try {
    if (platform === 'linux') return NETWORK_FILE_SYSTEMS.test(ask('stat', '-f', '-c', '%T', dirname(file)))
    return (
      platform === 'darwin' && MOUNTED_FROM_NETWORK.test(ask('df', '-P', dirname(file)).split('\n')[1] ?? '')
    )
  } catch {
    // Without these programs nothing is known of the disk, and no warning is better than a wrong one.
    return false
  }
}

/** A name of at most so many bytes in UTF-8, cut at a whole character as a reader counts them. */
export function withinBytes(name: string, most: number): string {
  let kept = ''
  for (const { segment } of new Intl.Segmenter().segment(name)) {
    if (Buffer.byteLength(kept + segment) > most) break
    kept += segment
  }
  return kept
}
