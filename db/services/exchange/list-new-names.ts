import { fold } from '../../domain/shared/fold.ts'
import { NearNames } from '../../domain/shared/near-names.ts'

/** A new name as a list spells it first, with the row. */
export interface NewName {
  readonly name: string
  readonly row: number
}

/** The names that a list brings and the book has not, row by row, so that two spellings of one are noticed. */
export class NewNames {
  readonly #first = new Map<string, NewName>()
  readonly #near = new Map<string, NearNames<NewName>>()

  /** How the list spelt a name first, accents and capitals apart, where nothing near it stood before; null otherwise. */
  firstOf(group: string, name: string): NewName | null {
    return this.#first.get(keyOf(group, name)) ?? null
  }

  /** Other names of a group, from earlier rows, that are a slip away. */
  near(group: string, name: string): NewName[] {
    const found = this.#near.get(group)?.near(name) ?? []
    return found.filter((other) => fold(other.name) !== fold(name))
  }

  /** Notes a name that stands near none before it. */
  addFirst(group: string, name: string, row: number): void {
    this.#first.set(keyOf(group, name), { name, row })
    this.add(group, name, row)
  }

  /** Notes a name that is one of its own although another is near. */
  add(group: string, name: string, row: number): void {
    const near = this.#near.get(group) ?? new NearNames<NewName>()
    near.add(name, { name, row })
    this.#near.set(group, near)
  }
}

function keyOf(group: string, name: string): string {
  return `${group} ${fold(name)}`
}
