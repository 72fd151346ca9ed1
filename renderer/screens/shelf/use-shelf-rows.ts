import { keepPreviousData, type UseQueryResult, useQueries } from '@tanstack/react-query'
import { range } from 'd3-array'
import type { ShelfRow } from '../../../db/contract/stock-operations.ts'
import { call } from '../../shared/client/call.ts'
import type { ProblemError } from '../../shared/client/problem-error.ts'
import type { ShelfQuery } from './filters.ts'

const PAGE = 100

/** The first and the last of some rows, or of some pages of them. */
export interface Span {
  readonly first: number
  readonly last: number
}

interface Page {
  readonly offset: number
  readonly rows: readonly ShelfRow[]
  readonly total: number
}

export interface ShelfRows {
  /** Null until the first answer. */
  readonly total: number | null
  /** The rows that are loaded, by their place in the list. */
  readonly at: ReadonlyMap<number, ShelfRow>
  readonly problem: ProblemError | null
  /** What is shown answers an earlier question. */
  readonly stale: boolean
}

/** The rows of the shelf round the part in view: whole pages, fetched as they come near. */
export function useShelfRows(query: ShelfQuery, pages: Span): ShelfRows {
  return useQueries({
    queries: range(pages.first, pages.last + 1).map((page) => ({
      queryKey: ['lot.list', query, page * PAGE],
      queryFn: async (): Promise<Page> => {
        const offset = page * PAGE
        return { offset, ...(await call('lot.list', { ...query, offset, limit: PAGE })) }
      },
      placeholderData: keepPreviousData,
    })),
    combine: rowsOf,
  })
}

function rowsOf(answers: readonly UseQueryResult<Page, ProblemError>[]): ShelfRows {
  const at = new Map<number, ShelfRow>()
  for (const { data } of answers) {
    data?.rows.forEach((row, i) => {
      at.set(data.offset + i, row)
    })
  }
  const fresh = answers.find((answer) => answer.data !== undefined && !answer.isPlaceholderData)
  const any = answers.find((answer) => answer.data !== undefined)
  return {
    total: (fresh ?? any)?.data?.total ?? null,
    at,
    problem: answers.find((answer) => answer.error !== null)?.error ?? null,
    stale: answers.some((answer) => answer.isPlaceholderData),
  }
}

/** The pages that a part of the list needs, with those that are near. */
export function pagesAround({ first, last }: Span): Span {
  const near = PAGE / 4
  return { first: Math.max(0, Math.floor((first - near) / PAGE)), last: Math.floor((last + near) / PAGE) }
}
