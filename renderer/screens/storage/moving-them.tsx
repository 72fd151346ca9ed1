import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** How long the lots of a place keep there, and would keep in each other place; computed once it is opened. */
export function MovingThem({ placeId }: { readonly placeId: number }) {
  const [open, setOpen] = useState(false)
  const read = useRead('place.preview-moves', open ? { placeId } : null, { keepLast: true })
  return (
    <details className="more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>What would it bring to move them?</summary>
      {read.error !== null && <ProblemText problem={read.error.problem} />}
      {open && read.data === undefined && read.error === null && <p className="soft">Working it out…</p>}
      {read.data !== undefined && <Moves moves={read.data} />}
    </details>
  )
}

function Moves({ moves }: { readonly moves: Value<'place.preview-moves'> }) {
  const format = useFormat()
  const { lots, notTold, already, places } = moves
  const not = notTold === 0 ? '' : ` Of ${format.number(notTold)} more nothing can be said.`
  if (lots === 0) return <p>Of no lot there can be said how long it keeps.</p>
  return (
    <>
      <p>
        {format.number(lots)} {lots === 1 ? 'lot' : 'lots'}; {format.number(already)}{' '}
        {already === 1 ? 'is' : 'are'} probably below {already === 1 ? 'its' : 'their'} threshold already.
        {not}
      </p>
      <table className="plain-table" aria-label="How long they keep, place by place">
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">Until half of those above are below</th>
            <th scope="col" className="number">
              More of them within 5 years
            </th>
          </tr>
        </thead>
        <tbody>
          {places.map(({ placeId, place, words, soon, notTold: notThere, caution }) => (
            <tr key={placeId ?? 'here'}>
              <th scope="row">{place}</th>
              <td>
                {words}
                {notThere > 0 && <span className="soft"> (not told of {format.number(notThere)})</span>}
                {caution !== '' && <span className="own-line caution">{caution}</span>}
              </td>
              <td className="number">{format.number(soon)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}
