import type { en } from './en/index.ts'

/** What a crop's seed is counted in. */
export type CountedIn = 'seed' | 'cluster' | 'fruit' | 'clove' | 'bulb' | 'tuber'

/** A number of seeds, or of clusters or fruits; `about`: worked out or guessed, not counted. */
export interface Seeds {
  readonly seeds: number
  readonly unit?: CountedIn
  readonly about?: boolean
}

/**
 * A mass in milligrams; `about`: it was worked out, or it is so only where the book keeps more figures than are shown; `within`: it was worked out to weigh by, and is
 * told finely enough to be no more than that beside it.
 */
export interface Mass {
  readonly mg: number
  readonly about?: boolean | 'where-rounded'
  readonly within?: number
}

/** A temperature in degrees C, told to a tenth; `about`: nobody measured it, so that 20 is not told as 20.0. */
export interface Temperature {
  readonly celsius: number
  readonly about?: boolean
}

/** A part of one, told as a percentage. */
export interface Part {
  readonly part: number
  readonly about?: boolean
}

/** A calendar date, 'YYYY-MM-DD'. */
export interface Day {
  readonly day: string
}

/** A moment, as ISO 8601 with its zone. */
export interface Moment {
  readonly moment: string
}

/** A person of the book by their id: the book never stores the name in a message. The name is there once it was looked up. */
export interface PersonNamed {
  readonly person: number
  readonly name?: string
}

/** Several values told one after the other: 'a, b and c'. */
export interface Listed {
  readonly list: readonly Value[]
  readonly as?: 'and' | 'or'
}

/** What a message is told with. A text is a name or what somebody typed, and stays as it is in every language. */
export type Value =
  | string
  | number
  | Seeds
  | Mass
  | Temperature
  | Part
  | Day
  | Moment
  | PersonNamed
  | Listed
  | Message

/** Every message that there is, by its id, as the English catalogue has it. */
type Catalogue = typeof en

export type MessageId = keyof Catalogue

/** The kind of a value, from the example that the catalogue gives of it. */
type KindOf<E> = E extends string
  ? string | Message
  : E extends number
    ? number
    : E extends { seeds: number }
      ? Seeds
      : E extends { mg: number }
        ? Mass
        : E extends { celsius: number }
          ? Temperature
          : E extends { part: number }
            ? Part
            : E extends { day: string }
              ? Day
              : E extends { moment: string }
                ? Moment
                : E extends { person: number }
                  ? PersonNamed
                  : E extends { list: unknown }
                    ? Listed
                    : E extends { id: string }
                      ? Message
                      : never

/** What a message has to be given. */
export type ValuesOf<I extends MessageId> = Catalogue[I] extends { values: infer V }
  ? { readonly [K in keyof V]: KindOf<V[K]> }
  : Record<never, never>

/** What is to be told, as a code and its figures: no language has been chosen yet. */
export interface Message {
  readonly id: MessageId
  readonly values: Readonly<Record<string, Value>>
}

type Given<I extends MessageId> = keyof ValuesOf<I> extends never ? [] : [values: ValuesOf<I>]

/** A message with all its values: one that lacks a value, or has another, does not compile. */
export function message<I extends MessageId>(id: I, ...[values]: Given<I>): Message {
  return { id, values: (values ?? {}) as Message['values'] }
}

/** Whether something is a message: an id and values, and nothing else. */
export function isMessage(value: unknown): value is Message {
  return (
    typeof value === 'object' &&
    value !== null &&
    'id' in value &&
    'values' in value &&
    typeof value.id === 'string' &&
    Object.keys(value).length === 2
  )
}
