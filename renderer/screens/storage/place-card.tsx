import { type FC, useState } from 'react'
import type { PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { warmth } from '../../../db/domain/climate/climate-words.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SelectField } from '../../shared/table-form/fields.tsx'
import { ClimateTrace } from './climate-trace.tsx'
import { ImportForm } from './import-form.tsx'
import { LotsThere } from './lots-there.tsx'
import { KindForm, ReadingForm, TermsForm } from './place-forms.tsx'
import { StateWords } from './place-row.tsx'

/** The days of readings to look at. */
const SPANS = ['14', '90', '365', '36500'] as const
type Span = (typeof SPANS)[number]

interface PlaceCardProps {
  readonly placeId: number
}

/** A place: how it stands, its climate drawn and in words, and the lots that lie there. */
export function PlaceCard({ placeId }: PlaceCardProps) {
  const [span, setSpan] = useState<Span>('90')
  const { t } = useTexts()
  const read = useRead('storage.get', { placeId, days: Number(span) }, { keepLast: true })
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return null
  const climate = read.data
  return (
    <Card className="card" name={climate.place.path}>
      <header className="card-head">
        <h2 tabIndex={-1}>{climate.place.name}</h2>
        <p>
          {climate.place.path === climate.place.name
            ? capital(t(`storage.kind-${climate.place.kind}`))
            : climate.place.path}
        </p>
        <StateWords place={climate.place} />
        <p>{climate.place.aim === 'none' ? t('storage.no-aim-said') : capital(climate.limits.words)}</p>
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
  readonly word: Message
  readonly form: FC<{ readonly climate: PlaceClimate; readonly onClose: () => void }>
}[] = [
  { name: 'reading', word: message('storage.write-reading'), form: ReadingForm },
  { name: 'file', word: message('storage.take-file-in'), form: ImportForm },
  { name: 'terms', word: message('storage.meant-for'), form: TermsForm },
  { name: 'kind', word: message('storage.which-kind'), form: KindForm },
]

function Doings({ climate }: { readonly climate: PlaceClimate }) {
  const { open, button, close } = useOpenForm<string>()
  const { t, say } = useTexts()
  const OpenForm = DOINGS.find(({ name }) => name === open)?.form
  return (
    <section className="pane-part what-to-do" aria-label={t('storage.what-to-do')}>
      <div className="buttons">
        {DOINGS.map(({ name, word }) => (
          <button key={name} type="button" className="quiet-button" {...button(name)}>
            {say(word)}
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
  const { t } = useTexts()
  const spells = climate.spells.filter(({ hours }) => hours >= 1)
  if (climate.sum === null)
    return (
      <section className="pane-part" aria-label={t('storage.climate')}>
        <h3>{t('storage.climate')}</h3>
        <p className="soft">{t('storage.nobody-read')}</p>
      </section>
    )
  return (
    <section className="pane-part" aria-label={t('storage.climate')}>
      <div className="head-row">
        <h3>{t('storage.climate')}</h3>
        <SelectField
          label={t('storage.over')}
          size="record"
          value={span}
          options={SPANS.map((value) => ({ value, label: t(`storage.span-${value}`) }))}
          onChange={onSpan}
        />
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
          <h4>{t('storage.spells')}</h4>
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
  const { t } = useTexts()
  if (batches.length === 0) return null
  return (
    <section className="pane-part" aria-label={t('storage.readings-from')}>
      <h3>{t('storage.readings-from')}</h3>
      <ul className="bullets">
        {batches.map(({ entryId, fileName, readings, leftOut, first, last }) => (
          <li key={entryId}>
            {fileName === null
              ? t('storage.batch-typed', { day: { day: first.slice(0, 10) }, time: first.slice(11) })
              : t('storage.batch-file', {
                  file: fileName,
                  readings,
                  first: { day: first.slice(0, 10) },
                  last: { day: last.slice(0, 10) },
                  leftOut,
                })}
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
  const { t } = useTexts()
  const [asked, setAsked] = useState(false)
  const { from, until, hours, highest, highestHumidity } = spell
  const days = { from: from.slice(0, 10), until: until.slice(0, 10) }
  const { data, error } = useRead('place.get-excursion-cost', asked ? { placeId, ...days } : null)
  // What went on before and after a single reading is not known.
  const lone = from === until
  const air = message('storage.highest-air', {
    celsius: warmth(100 * highest),
    damp: highestHumidity === null ? 'unread' : 'read',
    humidity: Math.round(highestHumidity ?? 0),
  })
  const [start, end] = [momentInWords(from), momentInWords(until)]
  return (
    <li>
      {lone
        ? t('storage.spell-of-one', { moment: start, air })
        : t('storage.spell', { from: start, until: end, length: lengthInWords(hours), air })}{' '}
      {hours >= A_DAY && !lone && !asked && (
        <button type="button" className="word-button" onClick={() => setAsked(true)}>
          {t('storage.what-did-it-cost')}
          <span className="only-aloud"> {t('storage.what-did-it-cost-from', { moment: start })}</span>
        </button>
      )}
      <span className="own-line strong" role="status">
        {asked && data === undefined && error === null ? t('storage.working-it-out') : (data?.words ?? '')}
      </span>
      {error !== null && <ProblemText problem={error.problem} />}
    </li>
  )
}

/** A minute on the wall clock of the place. */
function momentInWords(at: string): Message {
  return message('storage.moment', { day: { day: at.slice(0, 10) }, time: at.slice(11) })
}

function lengthInWords(hours: number): Message {
  return hours < 48
    ? message('storage.hours', { hours: Math.round(hours) })
    : message('storage.days', { days: Math.round(hours / 24) })
}
