import type { CallInput } from '../../../db/contract/contract.ts'
import type { LotRole } from '../../../db/contract/fields.ts'
import type { NeedState } from '../../../db/domain/needs/need.ts'

export type ShelfSort = NonNullable<CallInput<'lot.list'>['sort']>

export interface Filters {
  readonly text: string
  readonly cropId: string
  readonly role: LotRole | ''
  readonly state: NeedState | ''
  readonly quarantined: boolean
  readonly emptyToo: boolean
  readonly sort: ShelfSort
  readonly descending: boolean
}

export const NO_FILTERS: Filters = {
  text: '',
  cropId: '',
  role: '',
  state: '',
  quarantined: false,
  emptyToo: false,
  sort: 'number',
  descending: false,
}

/** Whether the filters leave anything out that the bare shelf would show. */
export function leavesOut(filters: Filters): boolean {
  const { text, cropId, role, state, quarantined } = filters
  return text.trim() !== '' || cropId !== '' || role !== '' || state !== '' || quarantined
}

export type ShelfQuery = Omit<CallInput<'lot.list'>, 'offset' | 'limit'>

export function queryOf(filters: Filters): ShelfQuery {
  const { text, cropId, role, state, quarantined, emptyToo, sort, descending } = filters
  return {
    text: text.trim(),
    ...(cropId === '' ? {} : { cropId }),
    ...(role === '' ? {} : { role }),
    ...(state === '' ? {} : { state }),
    ...(quarantined ? { quarantined } : {}),
    emptyToo,
    sort,
    descending,
  }
}
