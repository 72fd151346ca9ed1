import { expect, it } from 'vitest'
import { type Disk, inSyncedFolder } from '../../db/migrations/file-place.ts'

const disk = (more: Partial<Disk> = {}): Disk => ({
  platform: 'win32',
  realPath: (path) => path,
  ask: () => '',
  ...more,
})

it.each([
  '/home/keeper/Dropbox/seeds.drawer',
  '/Users/keeper/Dropbox (Seed Library)/seeds.drawer',
  'C:\\Users\\keeper\\Dropbox - Library\\seeds.drawer',
  'C:\\Users\\keeper\\OneDrive - School\\seeds.drawer',
  'G:\\My Drive\\seeds.drawer',
  'G:\\Meine Ablage\\Saatgut\\seeds.drawer',
  '/Users/keeper/Library/CloudStorage/GoogleDrive-keeper@example.org/My Drive/seeds.drawer',
  '/Users/keeper/Library/CloudStorage/Box-Box/seeds.drawer',
  '/Users/keeper/Library/Mobile Documents/com~apple~CloudDocs/seeds.drawer',
  'C:\\Users\\keeper\\iCloudDrive\\seeds.drawer',
  'C:\\Users\\keeper\\Proton Drive\\keeper\\My files\\seeds.drawer',
  '/home/keeper/pCloudDrive/seeds.drawer',
  '/Users/keeper/pCloud Drive/seeds.drawer',
  'C:\\Users\\keeper\\Box\\seeds.drawer',
  'C:\\Users\\keeper\\Box Sync\\seeds.drawer',
  '/run/user/1000/gvfs/google-drive:host=example.org/seeds.drawer',
  '\\\\server\\share\\seeds.drawer',
  '//server/share/seeds.drawer',
])('warns of %s', (path) => {
  expect(inSyncedFolder(path, disk())).not.toBeNull()
  const through = disk({ realPath: () => path })
  expect(inSyncedFolder('/home/keeper/Seeds/seeds.drawer', through), 'through a link').not.toBeNull()
})

it.each([
  '/home/keeper/Seeds/dropboxes.drawer',
  '/home/keeper/Seeds/Box/seeds.drawer',
  'D:\\Box of seed\\seeds.drawer',
  '\\\\?\\C:\\Users\\keeper\\Common Drawer\\seeds.drawer',
  '/Users/keeper/Common Drawer/Synced garden.drawer',
])('not of %s', (path) => {
  expect(inSyncedFolder(path, disk())).toBeNull()
})

it('warns of drive letters and mounts that lead to another computer', () => {
  const mapped = disk({ realPath: () => '\\\\server\\seeds\\seeds.drawer' })
  expect(inSyncedFolder('Z:\\seeds.drawer', mapped)).toBe('network')
  for (const [from, answer] of [
    ['//keeper@server/seeds', 'network'],
    ['server:/seeds', 'network'],
    ['/dev/disk3s5', null],
  ] as const) {
    const ask = () =>
      `Filesystem 512-blocks Used Available Capacity Mounted on\n${from} 9 4 5 44% /Volumes/seeds\n`
    expect(inSyncedFolder('/Volumes/seeds/s.drawer', disk({ platform: 'darwin', ask }))).toBe(answer)
  }
  const linux = (kind: string) => disk({ platform: 'linux', ask: () => kind })
  expect(inSyncedFolder('/mnt/seeds/s.drawer', linux('nfs'))).toBe('network')
  expect(inSyncedFolder('/mnt/seeds/s.drawer', linux('ext2/ext3'))).toBeNull()
})
