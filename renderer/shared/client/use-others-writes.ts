import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { call } from './call.ts'

/** How soon one window sees what another wrote, milliseconds. */
const LOOK_EVERY_MS = 700

/** What the collection's state is known by; asked for again and again by whoever gives an interval. */
function useRevision(refetchInterval: number | false) {
  return useQuery({
    queryKey: ['collection.get-revision'],
    queryFn: () => call('collection.get-revision', {}),
    refetchInterval,
    staleTime: 0,
  }).data
}

/** How many lots' forecasts are still to be worked out, and whether that was stopped; undefined until known. */
export function useForecastsLeft(): Value<'collection.get-revision'>['forecasts'] | undefined {
  return useRevision(false)?.forecasts
}

/** Has every read done afresh when another window wrote to the collection, or its forecasts are all worked out. */
export function useOthersWrites(): void {
  const queries = useQueryClient()
  const seen = useRef<string | null>(null)
  const now = useRevision(LOOK_EVERY_MS)
  const revision = now === undefined ? undefined : `${now.revision} ${now.forecasts.left === 0}`
  useEffect(() => {
    if (revision === undefined || revision === seen.current) return
    const isFirst = seen.current === null
    seen.current = revision
    if (isFirst) return
    void queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'collection.get-revision' })
  }, [revision, queries])
}
