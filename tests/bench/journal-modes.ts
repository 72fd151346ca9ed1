import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { createCollection } from '../../db/migrations/open-file.ts'
import { Bare } from './bare.ts'
import { compare } from './measure.ts'

/** The journal modes that keep every acknowledged write through a power cut. */
const MODES = [
  ['DELETE', 'EXTRA'],
  ['TRUNCATE', 'EXTRA'],
  ['PERSIST', 'EXTRA'],
  ['WAL', 'FULL'],
] as const
const ROUNDS = 101

const folder = mkdtempSync(join(tmpdir(), 'drawer-journal-'))
const now = () => new Date('2026-11-25T12:00:00Z')

async function emptyBook(name: string): Promise<string> {
  const file = join(folder, `${name}.drawer`)
  const facts = {
    kind: 'own',
    libraryName: 'Journal',
    accessionPattern: 'JO-{####}',
    key: 'journal-start',
    now,
    newId: () => '00000000-0000-4000-8000-0000000000be',
  } as const
  const { sqlite, close } = await createCollection(file, facts)
  sqlite.exec(`
    INSERT INTO entry (id, key, operation, input_digest, answer, said, recorded_at)
      VALUES (2, 'journal-gift', 'bare', '', '{}', 'bare', '');
    INSERT INTO variety (id, crop_id, name, name_folded, story) VALUES (1, 'bean', 'Amber', 'amber', '');
    INSERT INTO accession (id, number, bare, series, running, variety_id, donor_id, received_on, grown_at, story, terms, entry_id)
      VALUES (1, 'JO-0001', 'JO0001', 'JO', 1, 1, NULL, '2026-01-01', '', '', '', 2);
    INSERT INTO lot (id, accession_id, ordinal, number, bare, role, basis, harvest_about, generation, grown_at, held_by, estimated, entry_id)
      VALUES (1, 1, 1, 'JO-0001-A', 'JO0001A', 'working', 'counted', 0, 0, '', '', 0, 2);
    INSERT INTO movement (lot_id, entry_id, kind, on_date, count, mass_mg, measured, note)
      VALUES (1, 2, 'intake', '2026-01-01', 1000000, 1000000, 'carried', '');`)
  close()
  return file
}

console.log(`one withdrawal committed, median of ${ROUNDS}, each mode turn about with DELETE and EXTRA:`)
for (const [mode, synchronous] of MODES) {
  const [file, usual] = [await emptyBook(`${mode}-ours`), await emptyBook(`${mode}-usual`)]
  const keeper = new Database(file)
  keeper.pragma(`journal_mode = ${mode}`)
  keeper.close()
  const [tried, held] = [new Bare(file, mode, synchronous), new Bare(usual)]
  let visit = 0
  const key = () => `journal-visit-${visit++}`
  const { oursMs, ratio } = await compare(
    mode,
    ROUNDS,
    () => tried.withdraw(1, key()),
    () => held.withdraw(1, key()),
  )
  const beside = readdirSync(folder).filter((name) => name.startsWith(`${mode}-ours.drawer-`))
  console.log(
    `  ${mode.padEnd(9)} ${synchronous.padEnd(6)} ${oursMs.toFixed(2)} ms, ${ratio.toFixed(2)} of DELETE; beside the file while open: ${beside.join(', ') || 'nothing'}`,
  )
  tried.close()
  held.close()
}
rmSync(folder, { recursive: true })
