import { type RefObject, useState } from 'react'
import { useLocation } from 'wouter'
import { findAddress, lotAddress } from '../shared/addresses.ts'
import { call } from '../shared/client/call.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import { SuggestField } from '../shared/table-form/suggest-field.tsx'
import type { SuggestionSource } from '../shared/table-form/use-suggestions.ts'
import './find-field.css'

const LOTS: SuggestionSource<number> = {
  name: 'collection.search',
  find: async (text) => {
    const found = await call('collection.search', { text })
    const exactFirst = found.lots.toSorted(
      (a, b) => Number(b.lotId === found.exactLotId) - Number(a.lotId === found.exactLotId),
    )
    return exactFirst.map((lot) => ({
      key: String(lot.lotId),
      name: `${lot.lotNumber} ${lot.variety}`,
      detail: `${lot.crop}, ${lot.words}`,
      item: lot.lotId,
    }))
  },
}

interface FindFieldProps {
  readonly place: RefObject<HTMLDivElement | null>
  /** What a scan said that could not be followed. */
  readonly note: string
  readonly onTyped: () => void
}

/** The one field: a number or a few letters go to a lot, or to the shelf with all that fits. */
export function FindField({ place, note, onTyped }: FindFieldProps) {
  const { t } = useTexts()
  const [text, setText] = useState('')
  const [, go] = useLocation()
  const leaveFor = (path: string) => {
    setText('')
    onTyped()
    go(path)
  }
  return (
    <search ref={place} className="find-field">
      <SuggestField
        label={t('app.find')}
        placeholder={t('app.find-hint')}
        text={text}
        chosen={false}
        source={LOTS}
        onText={(typed) => {
          setText(typed)
          onTyped()
        }}
        onPick={(lotId) => leaveFor(lotAddress(lotId))}
        addNew={{
          label: (typed) => t('app.find-all', { typed }),
          onAdd: (typed) => leaveFor(findAddress(typed)),
        }}
        nothingFound={(typed) => t('app.found-nothing', { typed })}
      />
      <p className="find-note" role="status">
        {note}
      </p>
    </search>
  )
}
