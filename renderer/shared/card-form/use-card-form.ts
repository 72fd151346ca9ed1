import type { Value, WriteName } from '../../../db/contract/contract.ts'
import { useWrite, type WriteInput } from '../client/use-write.ts'
import { problemAt } from './card-form.tsx'
import { formFields, type NamesOf } from './form-fields.tsx'
import { useSavedForm } from './use-saved-form.ts'
import { useToday } from './use-today.ts'

interface CardFormTerms<N extends WriteName, T extends object> {
  /** The name by which what is typed is kept; without one it goes with the form. */
  readonly draftName?: string
  readonly empty: T
  /** The operation that the form is for. */
  readonly writes: N
  readonly onClose?: () => void
}

/**
 * The form of a card that ends in one write: what is typed is kept by its name until it was written, and then the form
 * closes.
 *
 * `textField`, `dayField`, `selectField`, `checkField` and `amountField` draw a field by the name of what is typed;
 * `field`, `choice` and `day` give a field of another kind what it needs beside its label. Where the input calls
 * it otherwise, `path` is where a refusal would name it. A problem is shown at the field that was asked for it, and by
 * the frame where no field was.
 */
export function useCardForm<N extends WriteName, T extends object>(terms: CardFormTerms<N, T>) {
  const { draftName, empty, writes, onClose } = terms
  const today = useToday()
  const { typed, change, discard } = useSavedForm(draftName, empty)
  const write = useWrite(writes, discard)
  const shownAtField: string[] = []
  const problem = (path: string) => {
    shownAtField.push(path)
    return problemAt(write.error, path)
  }
  const choice = <K extends keyof T & string>(name: K) => ({
    value: typed[name],
    onChange: (value: T[K]) => change({ [name]: value } as unknown as Partial<T>),
  })
  const dayOf = (name: NamesOf<T, string>) => (typed[name] as string) || today
  const send = (input: WriteInput<N>, onWritten?: (value: Value<N>) => void) =>
    write.mutate(input, {
      onSuccess: (value) => {
        if (onWritten === undefined) onClose?.()
        else onWritten(value)
      },
    })
  const frame = {
    busy: write.isPending || today === '',
    error: write.error,
    shownAtField,
    ...(onClose === undefined ? {} : { onClose }),
  }
  return {
    ...formFields({ choice, dayOf, problem }),
    typed,
    change,
    problem,
    choice,
    /** The day that was typed; today while none was. */
    dayOf,
    field: <K extends NamesOf<T, string>>(name: K, path: string = name) => ({
      ...choice(name),
      problem: problem(path),
    }),
    day: <K extends NamesOf<T, string>>(name: K, path: string = name) => ({
      ...choice(name),
      value: dayOf(name),
      problem: problem(path),
    }),
    /** Writes. Then nothing typed is kept any more, and the form closes unless there is something to do in its place. */
    send,
    /** What the frame of the form needs beside its words. */
    frame,
    /** The same with what is sent: null while what is typed cannot be. */
    sending: (input: WriteInput<N> | null, onWritten?: (value: Value<N>) => void) => ({
      ...frame,
      busy: frame.busy || input === null,
      onSend: () => {
        if (input !== null) send(input, onWritten)
      },
    }),
  }
}
