import { useState } from 'react'
import type { PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { celsiusInWords } from '../../../db/domain/climate/climate-words.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

interface SpellLineProps {
  readonly placeId: number
  readonly spell: PlaceClimate['spells'][number]
}

/** A shorter time tells nothing of what it cost: seed ages by days. */
const A_DAY = 24

/** A time beyond the limits and, when asked, what it cost the lots that lay there. */
export function SpellLine({ placeId, spell }: SpellLineProps) {
  const format = useFormat()
  const [asked, setAsked] = useState(false)
  const { from, until, hours, highest, highestHumidity } = spell
  const days = { from: from.slice(0, 10), until: until.slice(0, 10) }
  const { data, error } = useRead('place.get-excursion-cost', asked ? { placeId, ...days } : null)
  // What went on before and after a single reading is not known.
  const lone = from === until
  const moment = (at: string) => `${format.day(at.slice(0, 10))}, ${at.slice(11)}`
  return (
    <li>
      {lone
        ? `${moment(from)}, one reading: `
        : `${moment(from)} to ${moment(until)}, ${hoursInWords(hours)}: up to `}
      {celsiusInWords(Math.round(100 * highest))}
      {highestHumidity === null ? '' : ` and ${format.number(Math.round(highestHumidity))} %`}{' '}
      {hours >= A_DAY && !lone && !asked && (
        <button type="button" className="word-button" onClick={() => setAsked(true)}>
          what did it cost the lots there?<span className="only-aloud"> From {moment(from)}</span>
        </button>
      )}
      <span className="own-line strong" role="status">
        {asked && data === undefined && error === null ? 'Working it out…' : (data?.words ?? '')}
      </span>
      {error !== null && <ProblemText problem={error.problem} />}
    </li>
  )
}

function hoursInWords(hours: number): string {
  if (hours < 48) return `${Math.round(hours)} ${Math.round(hours) === 1 ? 'hour' : 'hours'}`
  return `${Math.round(hours / 24)} days`
}
