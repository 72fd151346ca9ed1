import { z } from 'zod'
import { Id } from './fields.ts'
import { says, Told } from './told.ts'

/**
 * One thing that can be asked of a collection.
 *
 * `reads` changes nothing. `keeps` holds on to something unfinished that is not in the book yet. `writes` is one transaction and one entry in the book: its input carries a `key`, so that a
 * repeated call does not act twice, and its output says what was done and by which entry it can be taken back.
 */
export interface Operation {
  readonly access: 'reads' | 'keeps' | 'writes'
  /** One sentence for a person. */
  readonly summary: string
  readonly input: z.ZodType
  readonly output: z.ZodType
}

/** Names one intention to write. The same key and input twice answers twice and acts once. */
export const RequestKey = z
  .string()
  .regex(/^[A-Za-z0-9_-]{8,64}$/, says('fits.request-key'))
  .describe('names this intention to write, so that a repeated call does not act twice')

/** What a write was refused for until it is said to be so, as `asks` of the refusals named it. */
const ItIsSo = z
  .array(z.string().max(200))
  .max(20)
  .optional()
  .describe('what a refusal asked about (its `asks`) and is so all the same')

/** Who does it and where: for a book that several people write in. */
const By = z
  .strictObject({ personId: Id, station: z.string().max(80), eventId: Id })
  .partial()
  .optional()
  .describe('who does it, at which station, at which event; none of it needs to be given')

/** What every write answers, beside its own facts. */
export const Receipt = z.object({
  entryId: z.int().describe('the entry in the book, for taking it back'),
  said: Told.describe('what was done, in one sentence'),
  undoable: z.boolean(),
})
export type Receipt = z.infer<typeof Receipt>

/** An operation that changes nothing. */
export function reads<I extends z.ZodType, O extends z.ZodType>(summary: string, input: I, output: O) {
  return { access: 'reads', summary, input, output } as const
}

/** An operation that holds on to something unfinished, which is not in the book yet. */
export function keeps<I extends z.ZodType, O extends z.ZodType>(summary: string, input: I, output: O) {
  return { access: 'keeps', summary, input, output } as const
}

/** An operation that writes one entry: its input gets the request key, its output the receipt. */
export function writes<I extends z.ZodRawShape, O extends z.ZodRawShape>(
  summary: string,
  input: I,
  output: O,
) {
  return {
    access: 'writes',
    summary,
    input: z.strictObject({ key: RequestKey, itIsSo: ItIsSo, by: By, ...input }),
    output: z.object({ ...Receipt.shape, ...output }),
  } as const
}
