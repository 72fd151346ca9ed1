import { execFileSync } from 'node:child_process'
import { dirname } from 'node:path'

/** Folder names that file-synchronising services use. A hint, not proof: names seen on common systems, from memory. */
const SYNCED =
  /(?:^|[\\/])(dropbox|onedrive[^\\/]*|google ?drive|icloud ?drive|mobile documents|nextcloud|owncloud|syncthing|sync)(?=[\\/])/i

const NETWORK_FILE_SYSTEMS = /^(nfs|cifs|smb|afp|9p|fuse\.sshfs|davfs)/i

/** Says in words when a file lies in a synchronised or network folder, where SQLite cannot keep it safe; else null. */
export function inSyncedFolder(file: string): string | null {
  if (SYNCED.test(file)) return 'a folder that is copied to other computers'
  if (/^\\\\/.test(file)) return 'a network folder'
  return isNetworkFileSystem(file) ? 'a network folder' : null
}

function isNetworkFileSystem(file: string): boolean {
  if (process.platform !== 'linux') return false
  try {
    const kind = execFileSync('stat', ['-f', '-c', '%T', dirname(file)], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
      timeout: 1_000,
    })
    return NETWORK_FILE_SYSTEMS.test(kind.trim())
  } catch {
    // Without `stat` nothing is known of the disk, and no warning is better than a wrong one.
    return false
  }
}
