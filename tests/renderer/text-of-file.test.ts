import { expect, test } from 'vitest'
import { textOfFile } from '../../renderer/screens/storage/text-of-file.ts'

const TEXT = 'Time;Temperature °C;Feuchte\n2026-03-14 08:30;18,5;42'
const utf16 = Buffer.from(TEXT, 'utf16le')

test.each([
  ['UTF-8', Buffer.from(TEXT)],
  ['UTF-8 with its mark', Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(TEXT)])],
  ['UTF-16, low byte first', Buffer.concat([Buffer.from([0xff, 0xfe]), utf16])],
  ['UTF-16, high byte first', Buffer.concat([Buffer.from([0xfe, 0xff]), Buffer.from(utf16).swap16()])],
  ['Windows-1252', Buffer.from(TEXT, 'latin1')],
])('a file in %s is read', async (_encoding, bytes) => {
  expect(await textOfFile(new Blob([new Uint8Array(bytes)]))).toBe(TEXT)
})
