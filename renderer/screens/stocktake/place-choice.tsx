import { useEffect, useRef, useState } from 'react'
import { Link, useLocation } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'
import { message } from '../../../db/messages/message.ts'
import { call } from '../../shared/client/call.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'

type Place = Value<'place.list'>['places'][number]

const PLACES: SuggestionSource<Place> = {
  name: 'places-with-lots',
  find: async (text) => {
    const { places } = await call('place.list', {})
    const fitting = places.filter(({ path }) => fold(path).includes(fold(text)))
    return fitting.slice(0, 12).map((place) => ({
      key: String(place.placeId),
      name: place.path,
      detail: <LotsThere lots={place.lots} />,
      item: place,
    }))
  },
}

/** The address of the stocktake of a place. */
function placeAddress(placeId: number): string {
  return `/stocktake/${placeId}`
}

/** Where the stocktake begins: a place by letters, from the list, or by the label of a lot that stands there. */
export function PlaceChoice() {
  const places = useRead('place.list', {}).data?.places
  const [text, setText] = useState('')
  const [, go] = useLocation()
  const { t } = useTexts()
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => box.current?.querySelector('input')?.focus(), [])
  const filled = places?.filter(({ lots }) => lots > 0) ?? []
  return (
    <div className="stack-4" ref={box}>
      <h1>{t('stocktake.title')}</h1>
      <SuggestField
        label={t('stocktake.which-place')}
        size="table"
        text={text}
        chosen={false}
        onText={setText}
        source={PLACES}
        onPick={({ placeId }) => go(placeAddress(placeId))}
        nothingFound={(typed) => message('stocktake.no-place-found', { typed })}
        placeholder={t('stocktake.place-like')}
      />
      {places !== undefined && filled.length === 0 && <p>{t('stocktake.no-places')}</p>}
      <ul className="ruled">
        {filled.map(({ placeId, path, lots }) => (
          <li key={placeId} className="head-row">
            <Link href={placeAddress(placeId)}>{path}</Link>{' '}
            <span className="soft">{t('stocktake.lots', { lots })}</span>
          </li>
        ))}
      </ul>
      <Link href="/shelf">{t('stocktake.back')}</Link>
    </div>
  )
}

function LotsThere({ lots }: { readonly lots: number }) {
  return useTexts().t('stocktake.lots', { lots })
}
