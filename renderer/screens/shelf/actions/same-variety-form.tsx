import { useMemo } from 'react'
import type { LotRecord } from '../../../../db/contract/stock-operations.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { call } from '../../../shared/client/call.ts'
import { SuggestField } from '../../../shared/table-form/suggest-field.tsx'
import type { SuggestionSource } from '../../../shared/table-form/use-suggestions.ts'
import type { ActionFormProps } from './action-form-props.ts'

interface Other {
  readonly varietyId: number
  readonly name: string
  readonly accessions: number
}

const EMPTY = { text: '', other: null as Other | null }

/** Joins another record of the same variety into this lot's; one step of undo parts them again. */
export function SameVarietyForm({ lot, ...kept }: ActionFormProps) {
  const form = useCardForm({ ...kept, empty: EMPTY, writes: 'variety.merge' })
  const source = useMemo(() => othersOf(lot), [lot])
  const { text, other } = form.typed
  return (
    <CardForm
      title={`Another record of ${lot.variety}`}
      sendWord={other === null ? 'Find the other record first' : `Join, and call both ${lot.variety}`}
      {...form.sending(other && { keepId: lot.varietyId, joinId: other.varietyId })}
    >
      <div className="card-form-wide">
        <SuggestField
          label="The same variety under another name"
          text={text}
          chosen={other !== null}
          onText={(typed) => form.change({ text: typed, other: null })}
          source={source}
          onPick={(found) => form.change({ text: found.name, other: found })}
          nothingFound={(typed) => `No other variety of ${lot.crop} is called ${typed}.`}
          placeholder="a few letters of any of its names"
          problem={form.problem('joinId')}
        />
      </div>
      {other !== null && (
        <p className="card-form-wide" role="status">
          {other.name} becomes another name of {lot.variety}, with {accessionsInWords(other.accessions)}.
          Numbers and what was written stay as they are; a packet that was printed keeps the name on it.
        </p>
      )}
    </CardForm>
  )
}

function accessionsInWords(accessions: number): string {
  return accessions === 1 ? 'its one accession' : `its ${accessions} accessions`
}

/** The other varieties of the lot's crop. */
function othersOf({ varietyId, cropId }: LotRecord): SuggestionSource<Other> {
  return {
    name: `varieties of ${cropId} but ${varietyId}`,
    find: async (text) => {
      const { varieties } = await call('variety.search', { text, cropId, limit: 9 })
      return varieties
        .filter((variety) => variety.varietyId !== varietyId)
        .map((variety) => ({
          key: String(variety.varietyId),
          name: variety.name,
          detail: accessionsInWords(variety.accessions).replace(/^its /, ''),
          item: variety,
        }))
    },
  }
}
