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
 * taken twice. An answer of any kind ends the intention. What is to be done once it is written, wherever the keeper has
 * gone meanwhile, is said here; what is to be done on the screen is said to `mutate`, which forgets it with the screen.
 */
export function useWrite<N extends WriteName>(
  name: N,
  onWritten?: () => void,
): UseMutationResult<Value<N>, ProblemError, WriteInput<N>> {
  const queries = useQueryClient()
  const openKey = useRef<string | null>(null)
  return useMutation<Value<N>, ProblemError, WriteInput<N>>({
    mutationFn: (input) => {
      openKey.current ??= crypto.randomUUID()
      return call(name, { key: openKey.current, ...input } as unknown as CallInput<N>)
    },
    onSuccess: (value) => {
      openKey.current = null
      onWritten?.()
      say(value as { said: string; entryId: number; undoable: boolean })
      void queries.invalidateQueries()
    },
    onError: (thrown) => {
      if (!(thrown instanceof NoAnswer)) openKey.current = null
    },
  })
}
