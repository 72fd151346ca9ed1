import { keepPreviousData, useQuery, useQueryClient } from '@tanstack/react-query'
import { answersNow } from '../client/use-read.ts'
import type { Suggestion } from './suggest-options.ts'
import { useSettled } from './use-settled.ts'

/** Where a field's suggestions come from. Two sources of one name must find the same. */
export interface SuggestionSource<T> {
  readonly name: string
  readonly find: (text: string) => Promise<readonly Suggestion<T>[]>
}

const FIND_AFTER_MS = 60
const NOTHING: readonly never[] = []

interface Suggestions<T> {
  readonly found: readonly Suggestion<T>[]
  /** Whether `found` answers the text as it stands, so that Enter may take from it. */
  readonly answersText: boolean
  readonly failure: string | undefined
  /** Asks at once, for an Enter that came before the answer. Throws ProblemError. */
  readonly findNow: () => Promise<readonly Suggestion<T>[]>
}

/** What is found for a text while it is typed; the last answer stays until the next is there. */
export function useSuggestions<T>(
  source: SuggestionSource<T>,
  text: string,
  wanted: boolean,
): Suggestions<T> {
  const queries = useQueryClient()
  const asked = text.trim()
  const settled = useSettled(asked, FIND_AFTER_MS)
  const query = (of: string) => ({
    queryKey: ['suggest', source.name, of],
    queryFn: () => (of === '' ? NOTHING : source.find(of)),
  })
  const answer = useQuery({ ...query(settled), enabled: wanted, placeholderData: keepPreviousData })
  return {
    found: asked === '' ? NOTHING : (answer.data ?? NOTHING),
    // What was found before the last write is shown, but not taken: since then the name may be in the book.
    answersText: asked === '' || (settled === asked && answersNow(answer)),
    failure: answer.error?.problem.sentence,
    findNow: () => queries.fetchQuery(query(asked)),
  }
}
