import { crc32, deflateSync } from 'node:zlib'
import type { ShippedSheet } from '../../db/contract/print-operations.ts'
import type { RunningApp } from '../app/support/running-app.ts'
import { type Raster, readPdf } from '../builders/read-pdf.ts'
import { savePlanOnce } from './saved-plan.ts'

/** A document of the demonstration: its picture's name, and how it is made. */
export interface Paper {
  readonly name: string
  /** The PDF in base64. */
  readonly make: (app: RunningApp) => Promise<{ readonly pdf: string }>
}

const DOTS_PER_INCH = 72

async function someLots(app: RunningApp): Promise<number[]> {
  const { rows } = await app.call('lot.list', { sort: 'count', descending: true, limit: 12 })
  return rows.map(({ lotId }) => lotId)
}

const labels =
  (sheet: ShippedSheet, more: { says?: 'number-only'; cropMarks?: boolean } = {}) =>
  async (app: RunningApp) => {
    const lotIds = await someLots(app)
    return app.call('label.print', { labels: lotIds.map((lotId) => ({ lotId })), sheet, ...more })
  }

/** The slip of the first hand-out of all. */
async function slip(app: RunningApp) {
  const { itemIds } = await app.call('tray.add', { items: [{ kind: 'slip', withdrawalId: 1 }] })
  return app.call('tray.render', { kind: 'slip', itemIds })
}

async function growerSheets(app: RunningApp) {
  await savePlanOnce(app)
  return app.call('season-plan.print', { siteId: null })
}

export const PAPERS: readonly Paper[] = [
  { name: 'document-labels', make: labels('a4-21', { cropMarks: true }) },
  { name: 'document-large-labels', make: labels('a4-8') },
  { name: 'document-number-labels', make: labels('a4-40', { says: 'number-only' }) },
  { name: 'document-packets', make: labels('packet-a4') },
  { name: 'document-envelope', make: labels('coin-5-half') },
  { name: 'document-letter', make: (app) => app.call('letter.render', { words: '', keeper: '' }) },
  { name: 'document-slip', make: slip },
  {
    name: 'document-keep-card',
    make: async (app) => app.call('keep-card.print', { lotIds: (await someLots(app)).slice(0, 1) }),
  },
  { name: 'document-catalogue', make: (app) => app.call('catalogue.print', {}) },
  { name: 'document-year', make: (app) => app.call('report.print', { year: 2025 }) },
  { name: 'document-stocktake', make: (app) => app.call('stocktake.sheet', {}) },
  { name: 'document-ruler', make: (app) => app.call('ruler.print', {}) },
  { name: 'document-grower-sheet', make: growerSheets },
  { name: 'document-round-sheet', make: (app) => app.call('round.print', {}) },
  { name: 'document-bench-sheet', make: (app) => app.call('germination.print', {}) },
]

/** The first page of a PDF as a PNG in shades of grey. */
export async function firstPage(pdf: string): Promise<Buffer> {
  const read = await readPdf(new Uint8Array(Buffer.from(pdf, 'base64')))
  const page = read.pages[0]
  if (page === undefined) throw new Error('A document has no page')
  const picture = png(page.raster(DOTS_PER_INCH))
  read.close()
  return picture
}

/** PNG (W3C, third edition): eight bits of grey, rows unfiltered. */
function png({ data, width, height }: Raster): Buffer {
  const rows = Buffer.alloc(height * (width + 1))
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rows[y * (width + 1) + 1 + x] = data[(y * width + x) * 4] ?? 255
  }
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head[8] = 8
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(kind: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(kind, 'latin1'), body])
  const around = Buffer.alloc(8)
  around.writeUInt32BE(body.length, 0)
  around.writeUInt32BE(crc32(named), 4)
  return Buffer.concat([around.subarray(0, 4), named, around.subarray(4)])
}
