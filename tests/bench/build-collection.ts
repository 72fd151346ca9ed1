import { existsSync, renameSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { milligrams } from '../../db/domain/amounts/mass.ts'
import { seedCount } from '../../db/domain/amounts/seed-count.ts'
import { type Balance, takeOut } from '../../db/domain/ledger/movement.ts'
import { lotLetter } from '../../db/domain/numbers/lot-letter.ts'
import { countFromMass, hundredSeedWeight } from '../../db/domain/weights/hundred-seed-weight.ts'
import type { Sqlite } from '../../db/migrations/connection.ts'
import { createCollection } from '../../db/migrations/open-file.ts'
import { seeded } from './random.ts'

/** How large a bench collection is, and what comes of it. */
export interface BenchSize {
  readonly lots: number
  readonly movementsPerLot: number
}

const SEED = 20261125
/** Changes when the collection that is built changes, so that an old one in the temporary folder is not taken. */
const RECIPE = 14
const FIRST_DAY = Date.UTC(2018, 0, 1)
const DAY_MS = 86_400_000

/** The bench collection of a size, built once and kept in the temporary folder. */
export async function benchCollection(size: BenchSize): Promise<string> {
  const file = join(tmpdir(), `common-drawer-bench-${RECIPE}-${size.lots}-${size.movementsPerLot}.drawer`)
  if (existsSync(file)) return file
  const unfinished = `${file}.unfinished`
  rmSync(unfinished, { force: true })
  const collection = await createCollection(unfinished, {
    kind: 'demo',
    libraryName: 'Bench',
    accessionPattern: 'BE-{####}',
    key: 'bench-start',
    now: () => new Date('2026-11-25T12:00:00Z'),
    newId: () => '00000000-0000-4000-8000-0000000000be',
  })
  collection.sqlite.transaction(() => fill(collection.sqlite, size))()
  collection.sqlite.exec('ANALYZE')
  collection.close()
  renameSync(unfinished, file)
  return file
}

interface Crop {
  readonly id: string
  readonly common_name: string
  readonly species: string
  readonly weight: number
}

function fill(sqlite: Sqlite, size: BenchSize): void {
  const random = seeded(SEED)
  const whole = (below: number) => Math.floor(random() * below)
  const crops = sqlite
    .prepare(
      'SELECT id, common_name, species, coalesce(hundred_seed_weight_ug, 1000000) AS weight FROM crop ORDER BY id',
    )
    .all() as Crop[]
  const accessions = Math.ceil(size.lots / 2.5)
  const people = Math.ceil(size.lots / 20)
  const varieties = Math.ceil(size.lots / 12)
  const places = Math.max(10, Math.ceil(size.lots / 200))
  fillNames(sqlite, { people, varieties, places, crops, whole })
  const put = statements(sqlite)
  let entryId = 1
  let lotId = 0
  const entry = (on: string) => {
    entryId += 1
    put.entry.run(entryId, `bench-${entryId}`, `${on}T10:00:00.000Z`)
    return entryId
  }
  for (let id = 1; id <= accessions; id += 1) {
    const varietyId = 1 + whole(varieties)
    const crop = crops[varietyId % crops.length]
    if (crop === undefined) throw new Error('No crop')
    const firstDay = whole(2_500)
    const number = `BE-${String(id).padStart(4, '0')}`
    const donor = 1 + whole(people)
    put.accession.run(
      id,
      number,
      number.replace('-', ''),
      id,
      varietyId,
      donor,
      dayAt(firstDay),
      entry(dayAt(firstDay)),
    )
    put.search.run(
      id,
      `be ${id} variety ${varietyId} ${nameOf(varietyId)} ${crop.common_name} ${crop.species} ${personName(donor)}`.toLowerCase(),
    )
    const lots = Math.min(size.lots - lotId, 1 + whole(4))
    for (let ordinal = 1; ordinal <= lots; ordinal += 1) {
      lotId += 1
      fillLot({ lotId, id, ordinal, number, crop, firstDay })
    }
  }
  sqlite.prepare("INSERT INTO number_series VALUES ('BE', ?)").run(accessions + 1)

  function fillLot(of: {
    lotId: number
    id: number
    ordinal: number
    number: string
    crop: Crop
    firstDay: number
  }): void {
    const { crop } = of
    const weighed = random() < 0.7
    const measured = random() < 0.7
    const weight = measured ? Math.max(1, Math.round(crop.weight * (0.85 + 0.3 * random()))) : crop.weight
    const lotNumber = `${of.number}-${lotLetter(of.ordinal)}`
    const role = of.ordinal === 1 ? 'working' : (['working', 'reserve', 'reference'][whole(3)] ?? 'working')
    const on = dayAt(of.firstDay)
    const first = entry(on)
    const harvest = Number(on.slice(0, 4)) - 1
    put.lot.run(
      of.lotId,
      of.id,
      of.ordinal,
      lotNumber,
      lotNumber.replaceAll('-', ''),
      role,
      weighed ? 'weighed' : 'counted',
      harvest,
      harvest,
      1 + whole(places),
      first,
    )
    if (measured) put.weight.run(of.lotId, of.lotId, on, weight, first)
    if (random() < 0.6) {
      const tested = 20 + whole(60)
      put.test.run(of.lotId, of.lotId, first)
      put.replicate.run(of.lotId, tested)
      put.germination.run(
        of.lotId,
        of.lotId,
        of.lotId,
        dayAt(of.firstDay + 200),
        tested,
        15 + whole(5),
        first,
      )
    }
    put.inForce.run(measured ? of.lotId : null, of.lotId, of.lotId)
    const hundred = hundredSeedWeight(weight)
    const start = milligrams(Math.max(50, Math.round((crop.weight / 100_000) * (100 + whole(900)))))
    let balance: Balance = { mass: start, count: countFromMass(start, hundred) }
    put.movement.run(of.lotId, first, 'intake', on, balance.count, balance.mass, 'mass', weight)
    for (let n = 1; n < size.movementsPerLot; n += 1) {
      const later = dayAt(of.firstDay + n * 40)
      const out = takeOut(
        balance,
        { kind: 'count', count: seedCount(1 + whole(12)), estimated: false },
        hundred,
      )
      if (out.kind === 'not-enough') {
        put.movement.run(of.lotId, entry(later), 'stocktake', later, 0, 0, 'carried', null)
        continue
      }
      balance = out.left
      put.movement.run(
        of.lotId,
        entry(later),
        n % 7 === 0 ? 'test' : 'withdrawal',
        later,
        out.change.count,
        out.change.mass,
        'count',
        weight,
      )
    }
  }
}

function dayAt(day: number): string {
  return new Date(FIRST_DAY + day * DAY_MS).toISOString().slice(0, 10)
}

const FIRST = [
  'Amber',
  'Ferry',
  'Mole',
  'Orchard',
  'Copper',
  'Winter',
  'Lantern',
  'Saddle',
  'Harbour',
  'Quill',
  'Dusk',
  'Rook',
]
const SECOND = [
  'Lane',
  'Pink',
  'Giant',
  'Early',
  'Speckled',
  'Wonder',
  'Climbing',
  'Hill',
  'Sugar',
  'Bell',
  'Dwarf',
  'Long',
]

function nameOf(varietyId: number): string {
  return `${FIRST[varietyId % FIRST.length]} ${SECOND[Math.floor(varietyId / FIRST.length) % SECOND.length]} ${varietyId}`
}

function personName(id: number): string {
  return `${SECOND[id % SECOND.length]} ${FIRST[Math.floor(id / SECOND.length) % FIRST.length]}son ${id}`
}

function fillNames(
  sqlite: Sqlite,
  of: {
    people: number
    varieties: number
    places: number
    crops: readonly Crop[]
    whole: (below: number) => number
  },
): void {
  const person = sqlite.prepare(
    "INSERT INTO person (id, name, name_folded, town, credit_as, note, created_on) VALUES (?, ?, ?, 'Quillhaven', '', '', '2018-01-01')",
  )
  for (let id = 1; id <= of.people; id += 1) person.run(id, personName(id), personName(id).toLowerCase())
  const variety = sqlite.prepare(
    "INSERT INTO variety (id, crop_id, name, name_folded, story) VALUES (?, ?, ?, ?, '')",
  )
  for (let id = 1; id <= of.varieties; id += 1) {
    variety.run(id, of.crops[id % of.crops.length]?.id, nameOf(id), nameOf(id).toLowerCase())
  }
  const place = sqlite.prepare("INSERT INTO storage_place VALUES (?, NULL, ?, 'box', ?)")
  for (let id = 1; id <= of.places; id += 1) place.run(id, `Box ${id}`, `Box ${id}`)
}

function statements(sqlite: Sqlite) {
  return {
    entry: sqlite.prepare(
      `INSERT INTO entry (id, key, operation, input_digest, answer, said, recorded_at)
       VALUES (?, ?, 'withdrawal.record', '', '{"undoable":true}', 'Handed out', ?)`,
    ),
    accession: sqlite.prepare(
      `INSERT INTO accession (id, number, bare, series, running, variety_id, donor_id, received_on, grown_at, story, terms, entry_id)
       VALUES (?, ?, ?, 'BE', ?, ?, ?, ?, 'Quillhaven', '', '', ?)`,
    ),
    search: sqlite.prepare('INSERT INTO accession_search (rowid, words) VALUES (?, ?)'),
    lot: sqlite.prepare(
      `INSERT INTO lot (id, accession_id, ordinal, number, bare, role, basis, harvest_from, harvest_to, harvest_about,
         generation, grown_at, place_id, held_by, estimated, entry_id)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, 0, 0, '', ?, '', 0, ?)`,
    ),
    weight:
      sqlite.prepare(`INSERT INTO seed_weight (id, lot_id, measured_on, hundred_seed_weight_ug, replicates, seeds_counted, chaffy, note, entry_id)
       VALUES (?, ?, ?, ?, 1, 50, 0, '', ?)`),
    test: sqlite.prepare(
      "INSERT INTO germination_test VALUES (?, ?, NULL, '', '', NULL, NULL, NULL, NULL, '', ?)",
    ),
    replicate: sqlite.prepare('INSERT INTO germination_replicate VALUES (?, 1, ?)'),
    germination: sqlite.prepare("INSERT INTO germination_result VALUES (?, ?, ?, ?, ?, ?, 0, 0, '', ?)"),
    inForce: sqlite.prepare(
      'UPDATE lot SET weight_id = ?, germination_id = (SELECT id FROM germination_result WHERE id = ?) WHERE id = ?',
    ),
    movement: sqlite.prepare(
      `INSERT INTO movement (lot_id, entry_id, kind, on_date, count, mass_mg, measured, weight_ug, note)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, '')`,
    ),
  }
}
