import type { z } from 'zod'
import {
  type CallInput,
  contract,
  type ParsedInput,
  type Result,
  type WriteName,
} from '../db/contract/contract.ts'
import type { PrintKind } from '../db/contract/print-operations.ts'
import type { OpenCollection } from '../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../db/services/run-operation.ts'
import type { DemoTables } from './demo-tables.ts'

type DemoWrite = WriteName & ServiceName
type Remembered = 'lot' | 'accession' | 'visit' | 'test' | 'recall' | 'entry'
type NamedBy = 'person' | 'place' | 'variety'

/** One entry of the book to be: its day, the row it stands in, and how it is written. */
export interface DemoStep {
  readonly on: string
  readonly where: string
  write(book: DemoBook): Promise<unknown>
}

/** The collection being filled, its clock, and what the names used in the files stand for in it. */
export class DemoBook {
  /** The moment at which the next entry is written. */
  now: Date
  readonly #collection: OpenCollection
  readonly #tables: DemoTables
  readonly #ids = new Map<string, number>()

  constructor(collection: OpenCollection, tables: DemoTables, now: Date) {
    this.#collection = collection
    this.#tables = tables
    this.now = now
  }

  /** Writes one entry at the book's present moment. Throws where the key was used or the service refuses. */
  async write<N extends DemoWrite>(
    name: N,
    key: string,
    facts: Omit<CallInput<N>, 'key'>,
  ): Promise<Result<N>> {
    const schema: z.ZodType = contract[name].input
    const input = schema.parse({ key, ...facts }) as ParsedInput<N>
    const value = await runOperation(this.#collection, name, input, () => this.now)
    this.remember('entry', key, (value as { entryId: number }).entryId)
    return value
  }

  /** What waits in the print tray of one kind of paper. */
  async waitingToPrint(kind: PrintKind): Promise<number[]> {
    const { groups } = await runOperation(this.#collection, 'tray.list', {}, () => this.now)
    return groups.flatMap((group) => (group.kind === kind ? group.items.map(({ itemId }) => itemId) : []))
  }

  /** Keeps what a name stands for. Throws where two rows bear one name. */
  remember(kind: Remembered | NamedBy, name: string, id: number): void {
    const known = `${kind} ${name}`
    if (this.#ids.has(known)) throw new Error(`There are two of ${known}. Name one of them otherwise.`)
    this.#ids.set(known, id)
  }

  /** What a name stands for. Throws where nothing of that name was written yet. */
  idOf(kind: Remembered, name: string): number {
    const id = this.#ids.get(`${kind} ${name}`)
    if (id === undefined) throw new Error(`There is no ${kind} ‘${name}’ at that date.`)
    return id
  }

  /** A person's id; they are added to the book on the day they first come. */
  person(name: string): Promise<number> {
    return this.#known('person', name, async () => {
      const { cells } = this.#row('people', 'person', name)
      const { person, credit_as: creditAs, may_write: mayWrite, name: called, ...rest } = cells
      const facts = { ...rest, name: called, creditAs, mayWrite }
      return (await this.write('person.create', `person-${person}`, facts)).personId
    })
  }

  /** A storage place's id; it is added, with what it stands in, when it is first used. */
  place(name: string): Promise<number> {
    return this.#known('place', name, async () => {
      const { place, inside, name: called, kind } = this.#row('places', 'place', name).cells
      const parentId = inside === null ? null : await this.place(inside)
      return (await this.write('place.create', `place-${place}`, { parentId, name: called, kind })).placeId
    })
  }

  /** A variety's id; it is added when its first seed comes. */
  variety(name: string): Promise<number> {
    return this.#known('variety', name, async () => {
      const {
        variety,
        crop,
        name: called,
        also_called,
        story,
      } = this.#row('varieties', 'variety', name).cells
      const facts = { cropId: crop, name: called, synonyms: also_called, story }
      return (await this.write('variety.create', `variety-${variety}`, facts)).varietyId
    })
  }

  /** Throws where a person, place or variety is in the files and nothing uses it. */
  assertAllUsed(): void {
    const rows = [
      ...this.#tables.people.map(({ where, cells }) => ({ where, known: `person ${cells.person}` })),
      ...this.#tables.places.map(({ where, cells }) => ({ where, known: `place ${cells.place}` })),
      ...this.#tables.varieties.map(({ where, cells }) => ({ where, known: `variety ${cells.variety}` })),
    ]
    const idle = rows.find(({ known }) => !this.#ids.has(known))
    if (idle) throw new Error(`${idle.where}: nothing uses the ${idle.known}.`)
  }

  async #known(kind: NamedBy, name: string, add: () => Promise<number>): Promise<number> {
    const known = this.#ids.get(`${kind} ${name}`)
    if (known !== undefined) return known
    const id = await add()
    this.remember(kind, name, id)
    return id
  }

  #row<T extends 'people' | 'places' | 'varieties', K extends keyof DemoTables[T][number]['cells']>(
    table: T,
    column: K,
    name: string,
  ): DemoTables[T][number] {
    const rows: readonly DemoTables[T][number][] = this.#tables[table]
    const found = rows.find((row) => (row.cells as Record<K, unknown>)[column] === name)
    if (found === undefined) throw new Error(`‘${name}’ is not in ${table}.csv.`)
    return found
  }
}
