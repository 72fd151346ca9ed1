import { type UseMutationResult, useMutation, useQueryClient } from '@tanstack/react-query'
import { useRef } from 'react'
import type { CallInput, Value, WriteName } from '../../../db/contract/contract.ts'
import { say } from '../foot-line/said.ts'
import { call } from './call.ts'
import { NoAnswer, type ProblemError } from './problem-error.ts'

/** A write's input; its key is made here unless the caller keeps one of its own, as a draft does. */
export type WriteInput<N extends WriteName> = Omit<CallInput<N>, 'key'> & { readonly key?: string }

/**
 * Writes to the collection, says on the foot line what was done, and has every read done afresh.
 *
 * One intention keeps one key: where nobody answered, the next try carries the key of the last, so that seed is never
 * taken twice. An answer of any kind ends the intention. What a refusal asked about is taken to be so when the keeper
 * sends once more. What is to be done once it is written, wherever the keeper has
 * gone meanwhile, is said here; what is to be done on the screen is said to `mutate`, which forgets it with the screen.
 */
export function useWrite<N extends WriteName>(
  name: N,
  onWritten?: () => void,
): UseMutationResult<Value<N>, ProblemError, WriteInput<N>> {
  const queries = useQueryClient()
  const openKey = useRef<string | null>(null)
  const askedAbout = useRef<readonly string[]>([])
  return useMutation<Value<N>, ProblemError, WriteInput<N>>({
    mutationFn: (input) => {
      openKey.current ??= crypto.randomUUID()
      const itIsSo = askedAbout.current.length === 0 ? {} : { itIsSo: askedAbout.current }
      return call(name, { key: openKey.current, ...input, ...itIsSo } as unknown as CallInput<N>)
    },
    onSuccess: (value) => {
      openKey.current = null
      askedAbout.current = []
      onWritten?.()
      say(value as { said: string; entryId: number; undoable: boolean })
      void queries.invalidateQueries()
    },
    onError: (thrown) => {
      if (!(thrown instanceof NoAnswer)) openKey.current = null
      const { asks } = thrown.problem
      if (asks !== undefined) askedAbout.current = [...askedAbout.current, asks]
    },
  })
}
