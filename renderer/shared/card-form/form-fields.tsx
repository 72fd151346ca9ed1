import type { ComponentProps, ReactNode } from 'react'
import { AmountField } from '../table-form/amount-field.tsx'
import { CheckField, DateField, SelectField, TextField } from '../table-form/fields.tsx'
import { DayField } from './day-field.tsx'

/** The names in what is typed whose values are of one type. */
export type NamesOf<T, V> = { [K in keyof T]: T[K] extends V ? K : never }[keyof T] & string

interface Choice<V> {
  readonly value: V
  readonly onChange: (value: V) => void
}

/** What the fields of a form need to know of it, by the name of what is typed. */
interface FormValues<T extends object> {
  readonly choice: <K extends keyof T & string>(name: K) => Choice<T[K]>
  /** The day that was typed; today while none was. */
  readonly dayOf: (name: NamesOf<T, string>) => string
  /** The problem at an input path, to be shown at the field that asks for it. */
  readonly problem: (path: string) => string | undefined
}

interface TextTerms
  extends Partial<
    Pick<
      ComponentProps<typeof TextField>,
      'hint' | 'words' | 'type' | 'value' | 'problem' | 'long' | 'placeholder'
    >
  > {
  /** Where a refusal would name it, if not by its own name. */
  readonly path?: string
}

/** The fields of a form, each drawn by the name of what is typed into it. */
export function formFields<T extends object>({ choice, dayOf, problem }: FormValues<T>) {
  const text = (name: NamesOf<T, string>) => choice(name) as unknown as Choice<string>
  return {
    textField: (name: NamesOf<T, string>, label: string, { path = name, ...terms }: TextTerms = {}) => {
      const refused = problem(path)
      return <TextField label={label} {...text(name)} {...terms} problem={terms.problem ?? refused} />
    },
    dateField: (name: NamesOf<T, string>, label: string, hint = '') => (
      <DateField label={label} size="record" {...text(name)} hint={hint} problem={problem(name)} />
    ),
    dayField: (name: NamesOf<T, string>) => (
      <DayField {...text(name)} value={dayOf(name)} problem={problem(name)} />
    ),
    selectField: <K extends NamesOf<T, string>>(
      name: K,
      label: string,
      options: readonly { readonly value: T[K] & string; readonly label: string }[],
      words = '',
    ) => (
      <SelectField
        label={label}
        options={options}
        words={words}
        {...(choice(name) as unknown as Choice<T[K] & string>)}
      />
    ),
    checkField: (name: NamesOf<T, boolean>, label: string, meaning?: ReactNode) => {
      const { value, onChange } = choice(name) as unknown as Choice<boolean>
      return <CheckField label={label} checked={value} onChange={onChange} meaning={meaning} />
    },
    amountField: (name: NamesOf<T, string>, label: string, lotId: number) => (
      <AmountField label={label} {...text(name)} problem={problem(name)} lotId={lotId} />
    ),
  }
}
