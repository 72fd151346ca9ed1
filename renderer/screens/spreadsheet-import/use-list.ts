import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { CallInput, Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { inBase64 } from '../../shared/client/file-bytes.ts'
import type { ProblemError } from '../../shared/client/problem-error.ts'

export type ListInput = Omit<CallInput<'import.preview'>, 'choices' | 'answers'> & {
  readonly choices: NonNullable<CallInput<'import.preview'>['choices']>
  readonly answers: Readonly<Record<string, string>>
}
export type ListPreview = Value<'import.preview'>
export type ReadList = Extract<ListPreview, { kind: 'read' }>

/** A list that the keeper chose, what was said of it, and how it is understood so far. */
export function useList() {
  const [list, setList] = useState<(ListInput & { readonly pickedAt: number }) | null>(null)
  const seen = useQuery<ListPreview, ProblemError>({
    // The file itself is left out of the key: it is long, and the moment it was picked names it.
    queryKey: ['import.preview', list?.pickedAt, list?.choices, list?.answers],
    queryFn: () => call('import.preview', inputOf(list)),
    enabled: list !== null,
    placeholderData: (last, query) =>
      query?.queryKey[1] === list?.pickedAt ? keepPreviousData(last) : undefined,
  })
  return {
    list,
    seen,
    pick: async (file: File) => {
      const content = await inBase64(file)
      setList({ fileName: file.name, content, choices: {}, answers: {}, pickedAt: Date.now() })
    },
    choose: (choices: ListInput['choices']) =>
      setList((now) => now && { ...now, choices: { ...now.choices, ...choices } }),
    answer: (answers: ListInput['answers']) =>
      setList((now) => now && { ...now, answers: { ...now.answers, ...answers } }),
    discard: () => setList(null),
  }
}

/** What is sent of a list. */
export function inputOf(list: ListInput | null): CallInput<'import.preview'> {
  if (list === null) throw new Error('No list was chosen')
  const { fileName, content, choices, answers } = list
  return { fileName, content, choices, answers }
}
