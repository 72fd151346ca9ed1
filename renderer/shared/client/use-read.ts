import { keepPreviousData, type UseQueryResult, useQuery } from '@tanstack/react-query'
import type { CallInput, ReadName, Value } from '../../../db/contract/contract.ts'
import { call } from './call.ts'
import type { ProblemError } from './problem-error.ts'

export interface ReadOptions {
  /** Shows the last answer while the next is fetched, so that a list does not blink at each key. */
  readonly keepLast?: boolean
}

/** Reads from the collection; every write reads it afresh. A null input asks nothing yet. */
export function useRead<N extends ReadName>(
  name: N,
  input: CallInput<N> | null,
  options: ReadOptions = {},
): UseQueryResult<Value<N>, ProblemError> {
  return useQuery<Value<N>, ProblemError>({
    queryKey: [name, input],
    queryFn: () => call(name, input as CallInput<N>),
    enabled: input !== null,
    ...(options.keepLast ? { placeholderData: keepPreviousData } : {}),
  })
}

/** Whether what is shown is the answer to what is asked now: not the last one, and not one of before a write. */
export function answersNow(answer: UseQueryResult<unknown, unknown>): boolean {
  return answer.isSuccess && !answer.isPlaceholderData && !answer.isFetching
}
