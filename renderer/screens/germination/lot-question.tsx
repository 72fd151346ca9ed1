import { useState } from 'react'
import { call } from '../../shared/client/call.ts'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'

interface LotFound {
  readonly lotId: number
}

/** Every lot by scan, number or letters: the reserve is tested too. */
const ANY_LOT: SuggestionSource<LotFound> = {
  name: 'lots to test',
  find: async (text) => {
    const { lots } = await call('collection.search', { text, limit: 8 })
    return lots.map(({ lotId, lotNumber, variety, crop, words }) => ({
      key: String(lotId),
      name: variety,
      detail: [lotNumber, crop, words].filter((part) => part !== '').join(' · '),
      item: { lotId },
    }))
  },
}

/** Which lot is tested next. */
export function LotQuestion({ onPick }: { readonly onPick: (lotId: number) => void }) {
  const [text, setText] = useState('')
  return (
    <SuggestField
      label="Test a lot"
      text={text}
      chosen={false}
      onText={setText}
      source={ANY_LOT}
      onPick={({ lotId }) => {
        setText('')
        onPick(lotId)
      }}
      nothingFound={(typed) => `No lot fits ${typed}.`}
      placeholder="scan, number, or a few letters"
    />
  )
}
