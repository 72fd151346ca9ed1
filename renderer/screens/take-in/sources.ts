import type { Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'

type VarietyFound = Value<'variety.search'>['varieties'][number]

/** Varieties by any of their names. */
export const VARIETIES: SuggestionSource<VarietyFound> = {
  name: 'varieties',
  find: async (text) => {
    const { varieties } = await call('variety.search', { text, limit: 8 })
    return varieties.map((variety) => ({
      key: String(variety.varietyId),
      name: variety.name,
      detail: [
        variety.cropName,
        ...(variety.matched === '' || variety.matched === variety.name
          ? []
          : [`also called ${variety.matched}`]),
      ].join(' · '),
      item: variety,
    }))
  },
}
