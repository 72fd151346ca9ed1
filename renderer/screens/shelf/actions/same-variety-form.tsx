import { useMemo } from 'react'
import type { LotRecord } from '../../../../db/contract/stock-operations.ts'
import type { Texts } from '../../../../db/messages/texts.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { call } from '../../../shared/client/call.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: EMPTY, writes: 'variety.merge' })
  const source = useMemo(() => othersOf(lot, t), [lot, t])
  const { text, other } = form.typed
  return (
    <CardForm
      title={t('shelf.another-record', { variety: lot.variety })}
      sendWord={other === null ? t('shelf.find-other-first') : t('shelf.join-both', { variety: lot.variety })}
      {...form.sending(other && { keepId: lot.varietyId, joinId: other.varietyId })}
    >
      <div className="card-form-wide">
        <SuggestField
          label={t('shelf.same-variety')}
          text={text}
          chosen={other !== null}
          onText={(typed) => form.change({ text: typed, other: null })}
          source={source}
          onPick={(found) => form.change({ text: found.name, other: found })}
          nothingFound={(typed) => t('shelf.no-other-variety', { crop: lot.crop, typed })}
          placeholder={t('shelf.same-variety-hint')}
          problem={form.problem('joinId')}
        />
      </div>
      {other !== null && (
        <p className="card-form-wide" role="status">
          {t('shelf.becomes-another-name', {
            other: other.name,
            variety: lot.variety,
            accessions: other.accessions,
          })}
        </p>
      )}
    </CardForm>
  )
}

/** The other varieties of the lot's crop. */
function othersOf({ varietyId, cropId }: LotRecord, t: Texts['text']): SuggestionSource<Other> {
  return {
    name: `varieties-of-${cropId}-but-${varietyId}`,
    find: async (text) => {
      const { varieties } = await call('variety.search', { text, cropId, limit: 9 })
      return varieties
        .filter((variety) => variety.varietyId !== varietyId)
        .map((variety) => ({
          key: String(variety.varietyId),
          name: variety.name,
          detail: t('shelf.accessions', { accessions: variety.accessions }),
          item: variety,
        }))
    },
  }
}
