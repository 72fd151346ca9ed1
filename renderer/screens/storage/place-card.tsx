import { type FC, useState } from 'react'
import type { PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { celsiusInWords } from '../../../db/domain/climate/climate-words.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SelectField } from '../../shared/table-form/fields.tsx'
import { ClimateTrace } from './climate-trace.tsx'
import { ImportForm } from './import-form.tsx'
import { LotsThere } from './lots-there.tsx'
import { KindForm, ReadingForm, TermsForm } from './place-forms.tsx'
import { StateWords } from './place-row.tsx'

const SPANS = [
  { value: '14', label: 'the last two weeks' },
  { value: '90', label: 'the last three months' },
  { value: '365', label: 'the last year' },
  { value: '36500', label: 'all of it' },
] as const
type Span = (typeof SPANS)[number]['value']

interface PlaceCardProps {
  readonly placeId: number
}

/** A place: how it stands, its climate drawn and in words, and the lots that lie there. */
export function PlaceCard({ placeId }: PlaceCardProps) {
  const [span, setSpan] = useState<Span>('90')
  const format = useFormat()
  const read = useRead('storage.get', { placeId, days: Number(span) }, { keepLast: true })
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return null
  const climate = read.data
  return (
    <Card className="card" name={climate.place.path}>
      <header className="card-head">
        <h2 tabIndex={-1}>{climate.place.name}</h2>
        <p>{climate.place.path === climate.place.name ? capital(climate.place.kind) : climate.place.path}</p>
        <StateWords place={climate.place} format={format} />
        <p>
          {climate.place.aim === 'none'
            ? 'Nobody has said what it is meant for.'
            : `${capital(climate.limits.words)}.`}
        </p>
      </header>
      <Doings climate={climate} />
      <Climate climate={climate} span={span} onSpan={setSpan} />
      <LotsThere climate={climate} />
      <Batches climate={climate} />
    </Card>
  )
}

const DOINGS: readonly {
  readonly name: string
  readonly word: string
  readonly form: FC<{ readonly climate: PlaceClimate; readonly onClose: () => void }>
}[] = [
  { name: 'reading', word: 'Write a reading down', form: ReadingForm },
  { name: 'file', word: 'Take a logger’s file in', form: ImportForm },
  { name: 'terms', word: 'What it is meant for', form: TermsForm },
  { name: 'kind', word: 'What kind of place it is', form: KindForm },
]

function Doings({ climate }: { readonly climate: PlaceClimate }) {
  const { open, button, close } = useOpenForm<string>()
  const OpenForm = DOINGS.find(({ name }) => name === open)?.form
  return (
    <section className="pane-part" aria-label="What to do with it">
      <div className="buttons">
        {DOINGS.map(({ name, word }) => (
          <button key={name} type="button" className="quiet-button" {...button(name)}>
            {word}
          </button>
        ))}
      </div>
      {OpenForm !== undefined && open !== null && (
        <OpenForm key={open} climate={climate} onClose={() => close(open)} />
      )}
    </section>
  )
}

interface ClimateProps {
  readonly climate: PlaceClimate
  readonly span: Span
  readonly onSpan: (span: Span) => void
}

function Climate({ climate, span, onSpan }: ClimateProps) {
  const spells = climate.spells.filter(({ hours }) => hours >= 1)
  if (climate.sum === null)
    return (
      <section className="pane-part" aria-label="Climate">
        <h3>Climate</h3>
        <p className="soft">Nobody has read this place yet. A reading a week tells much already.</p>
      </section>
    )
  return (
    <section className="pane-part" aria-label="Climate">
      <div className="head-row">
        <h3>Climate</h3>
        <SelectField label="Over" size="record" value={span} options={SPANS} onChange={onSpan} />
      </div>
      <ClimateTrace climate={climate} />
      <ul className="bullets">
        {climate.words.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {climate.thaws !== null && <li className="caution">{climate.thaws.words}</li>}
      </ul>
      {spells.length > 0 && (
        <>
          <h4>Longest times beyond the limits</h4>
          <ul className="bullets">
            {spells.map((spell) => (
              <SpellLine key={spell.from} placeId={climate.place.placeId} spell={spell} />
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

function Batches({ climate: { batches } }: { readonly climate: PlaceClimate }) {
  const format = useFormat()
  if (batches.length === 0) return null
  return (
    <section className="pane-part" aria-label="Where the readings come from">
      <h3>Where the readings come from</h3>
      <ul className="bullets">
        {batches.map(({ entryId, fileName, readings, leftOut, first, last }) => (
          <li key={entryId}>
            {fileName === null
              ? `typed, ${format.day(first.slice(0, 10))} ${first.slice(11)}`
              : `${fileName}: ${format.many(readings, 'reading')}, ${format.day(first.slice(0, 10))} to ${format.day(last.slice(0, 10))}`}
            {leftOut > 0 && `; ${format.number(leftOut)} ${leftOut === 1 ? 'row' : 'rows'} left out`}
          </li>
        ))}
      </ul>
    </section>
  )
}

interface SpellLineProps {
  readonly placeId: number
  readonly spell: PlaceClimate['spells'][number]
}

/** A shorter time tells nothing of what it cost: seed ages by days. */
const A_DAY = 24

/** A time beyond the limits and, when asked, what it cost the lots that lay there. */
function SpellLine({ placeId, spell }: SpellLineProps) {
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
