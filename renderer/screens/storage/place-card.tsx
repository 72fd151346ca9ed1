import { useState } from 'react'
import type { PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { ClimateTrace } from './climate-trace.tsx'
import { ImportForm } from './import-form.tsx'
import { KindForm } from './kind-form.tsx'
import { LotsThere } from './lots-there.tsx'
import { ReadingForm } from './reading-form.tsx'
import { SpellLine } from './spell-line.tsx'
import { StateWords } from './state-words.tsx'
import { TermsForm } from './terms-form.tsx'

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

type Doing = 'reading' | 'file' | 'terms' | 'kind'
const DOINGS: readonly (readonly [Doing, string])[] = [
  ['reading', 'Write a reading down'],
  ['file', 'Take a logger’s file in'],
  ['terms', 'What it is meant for'],
  ['kind', 'What kind of place it is'],
]

function Doings({ climate }: { readonly climate: PlaceClimate }) {
  const { open, button, close } = useOpenForm<Doing>()
  const { placeId } = climate.place
  return (
    <section className="pane-part" aria-label="What to do with it">
      <div className="buttons">
        {DOINGS.map(([name, word]) => (
          <button key={name} type="button" className="quiet-button" {...button(name)}>
            {word}
          </button>
        ))}
      </div>
      {open === 'reading' && <ReadingForm placeId={placeId} onClose={() => close('reading')} />}
      {open === 'file' && <ImportForm placeId={placeId} onClose={() => close('file')} />}
      {open === 'terms' && <TermsForm climate={climate} onClose={() => close('terms')} />}
      {open === 'kind' && <KindForm place={climate.place} onClose={() => close('kind')} />}
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
