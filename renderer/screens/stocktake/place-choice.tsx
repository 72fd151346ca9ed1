import { useEffect, useRef, useState } from 'react'
import { Link, useLocation } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'
import { call } from '../../shared/client/call.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'

type Place = Value<'place.list'>['places'][number]

const PLACES: SuggestionSource<Place> = {
  name: 'places with lots',
  find: async (text) => {
    const { places } = await call('place.list', {})
    const fitting = places.filter(({ path }) => fold(path).includes(fold(text)))
    return fitting.slice(0, 12).map((place) => ({
      key: String(place.placeId),
      name: place.path,
      detail: lotsInWords(place.lots),
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
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => box.current?.querySelector('input')?.focus(), [])
  const filled = places?.filter(({ lots }) => lots > 0) ?? []
  return (
    <div className="stack-4" ref={box}>
      <h1>Stocktake</h1>
      <SuggestField
        label="Which place?"
        size="table"
        text={text}
        chosen={false}
        onText={setText}
        source={PLACES}
        onPick={({ placeId }) => go(placeAddress(placeId))}
        nothingFound={(typed) => `No place is called ${typed}.`}
        placeholder="a few letters, or scan a label"
      />
      {places !== undefined && filled.length === 0 && (
        <p>No lot has a place yet. On the Shelf, a lot’s card moves it to one.</p>
      )}
      <ul className="ruled">
        {filled.map(({ placeId, path, lots }) => (
          <li key={placeId} className="head-row">
            <Link href={placeAddress(placeId)}>{path}</Link> <span className="soft">{lotsInWords(lots)}</span>
          </li>
        ))}
      </ul>
      <Link href="/shelf">Back to the shelf</Link>
    </div>
  )
}

function lotsInWords(lots: number): string {
  return lots === 1 ? '1 lot' : `${lots} lots`
}
