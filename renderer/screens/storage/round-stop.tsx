import { useId } from 'react'
import type { RoundStop } from '../../../db/contract/care-operations.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { TickList } from '../../shared/parts/tick-list.tsx'
import { CheckField, SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { type Inspection, lookOf, type RoundDraft, type RoundStep, stopOf } from './round-draft.ts'
import { figureProblem, UNITS } from './typed-number.ts'

interface RoundPartProps {
  readonly stop: RoundStop
  readonly draft: RoundDraft
  readonly dispatch: (step: RoundStep) => void
}

/** A place of a round: what there is to look at, ticked one after the other. */
export function RoundPlace({ stop, draft, dispatch }: RoundPartProps) {
  const { t } = useTexts()
  const looks = stop.looks.flatMap(({ look }) => (look === 'reading' ? [] : [look]))
  return (
    <section className="pane-part" aria-label={stop.path}>
      <h3>{stop.path}</h3>
      <p>
        {stop.due.when === 'late' && <span className="late-mark">{t('storage.late')}</span>}
        {t('storage.due', { when: stop.due.when, day: { day: stop.due.on } })}{' '}
        {stop.lastOn === null
          ? t('storage.never-walked', { days: stop.everyDays })
          : t('storage.last-walked', { day: { day: stop.lastOn }, days: stop.everyDays })}{' '}
        {t('storage.so-many-there', { lots: stop.lots.length })}
      </p>
      {looks.map((look) => (
        <RoundLook key={look} look={look} stop={stop} draft={draft} dispatch={dispatch} />
      ))}
      <RoundReading stop={stop} draft={draft} dispatch={dispatch} />
      <p>
        <button
          type="button"
          className="quiet-button"
          onClick={() => dispatch({ kind: 'rest-is-fine', placeId: stop.placeId, looks })}
        >
          {t('storage.rest-is-fine')}
        </button>
      </p>
    </section>
  )
}

const OUTCOMES = ['fine', 'found', ''] as const

function RoundLook({ look, stop, draft, dispatch }: RoundPartProps & { readonly look: Inspection }) {
  const { t } = useTexts()
  const name = useId()
  const { placeId } = stop
  const said = lookOf(draft, placeId, look)
  const { name: title, words } = stop.looks.find((each) => each.look === look) ?? { name: '', words: '' }
  const change = (part: Partial<typeof said>) => dispatch({ kind: 'look', placeId, look, change: part })
  return (
    <div className="stack-2">
      <fieldset className="round-ticks" data-step={`${placeId}.${look}`}>
        <legend>
          {capital(title)} <span className="soft">{words}</span>
        </legend>
        {OUTCOMES.map((outcome) => (
          <label key={outcome} className="tick">
            <input
              type="radio"
              name={name}
              checked={said.outcome === outcome}
              onChange={() => change({ outcome })}
            />
            {t(`storage.outcome-${outcome === '' ? 'none' : outcome}`)}
          </label>
        ))}
      </fieldset>
      {said.outcome === 'found' && (
        <div className="round-found stack-2">
          <TextField
            label={t('storage.what-was-found', { look: title })}
            step={`${placeId}.${look}.note`}
            size="record"
            value={said.note}
            onChange={(note) => change({ note })}
          />
          {stop.lots.length > 0 && (
            <TickList
              className="round-lots boxed"
              legend={t('storage.in-which-lots')}
              items={stop.lots.map(({ lotId, lotNumber, variety, quarantined }) => ({
                id: lotId,
                words: (
                  <span>
                    {lotNumber} {variety}{' '}
                    {quarantined && <span className="soft">{t('storage.quarantined-already')}</span>}
                  </span>
                ),
              }))}
              ticked={said.lotIds}
              onChange={(lotIds) => change({ lotIds })}
            />
          )}
          {said.lotIds.length > 0 && (
            <CheckField
              label={t('storage.quarantine-them')}
              step={`${placeId}.${look}.quarantine`}
              checked={said.quarantine}
              onChange={(quarantine) => change({ quarantine })}
            />
          )}
        </div>
      )}
    </div>
  )
}

function RoundReading({ stop: { placeId }, draft, dispatch }: RoundPartProps) {
  const { t, say } = useTexts()
  const { reading } = stopOf(draft, placeId)
  const change = (part: Partial<typeof reading>) => {
    const time = reading.time === '' ? new Date().toTimeString().slice(0, 5) : reading.time
    dispatch({ kind: 'reading', placeId, change: { time, ...part } })
  }
  return (
    <div className="fields">
      <TextField
        label={t('storage.temperature')}
        step={`${placeId}.temperature`}
        size="record"
        value={reading.temperature}
        hint={t('storage.empty-not-read')}
        onChange={(temperature) => change({ temperature })}
        problem={figureProblem(reading.temperature, say)}
      />
      <SelectField
        label={t('storage.in-unit')}
        size="record"
        value={reading.unit}
        options={UNITS}
        onChange={(unit) => change({ unit })}
      />
      <TextField
        label={t('storage.humidity-percent')}
        step={`${placeId}.humidity`}
        size="record"
        value={reading.humidity}
        onChange={(humidity) => change({ humidity })}
        problem={figureProblem(reading.humidity, say)}
      />
    </div>
  )
}
