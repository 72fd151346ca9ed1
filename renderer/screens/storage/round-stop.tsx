import { useId } from 'react'
import type { RoundStop } from '../../../db/contract/care-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
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
  const format = useFormat()
  const looks = stop.looks.flatMap(({ look }) => (look === 'reading' ? [] : [look]))
  const due =
    stop.due.when === 'later'
      ? `due on ${format.day(stop.due.on)}`
      : stop.due.when === 'today'
        ? 'due today'
        : `was due on ${format.day(stop.due.on)}`
  const last = stop.lastOn === null ? 'never walked to' : `walked to on ${format.day(stop.lastOn)}`
  return (
    <section className="pane-part" aria-label={stop.path}>
      <h3>{stop.path}</h3>
      <p>
        {stop.due.when === 'late' && <span className="late-mark">late</span>}
        {capital(due)}; {last}; every {stop.everyDays} {stop.everyDays === 1 ? 'day' : 'days'}.{' '}
        {stop.lots.length === 1 ? '1 lot' : `${stop.lots.length} lots`} there.
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
          The rest is fine here
        </button>
      </p>
    </section>
  )
}

const OUTCOMES = [
  ['fine', 'fine'],
  ['found', 'found something'],
  ['', 'not looked at'],
] as const

function RoundLook({ look, stop, draft, dispatch }: RoundPartProps & { readonly look: Inspection }) {
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
        {OUTCOMES.map(([outcome, label]) => (
          <label key={outcome} className="tick">
            <input
              type="radio"
              name={name}
              checked={said.outcome === outcome}
              onChange={() => change({ outcome })}
            />
            {label}
          </label>
        ))}
      </fieldset>
      {said.outcome === 'found' && (
        <div className="round-found stack-2">
          <TextField
            label={`What was found: ${title}`}
            step={`${placeId}.${look}.note`}
            size="record"
            value={said.note}
            onChange={(note) => change({ note })}
          />
          {stop.lots.length > 0 && (
            <TickList
              className="round-lots boxed"
              legend="In which lots; none: in the place"
              items={stop.lots.map(({ lotId, lotNumber, variety, quarantined }) => ({
                id: lotId,
                words: (
                  <span>
                    {lotNumber} {variety}
                    {quarantined && <span className="soft"> in quarantine already</span>}
                  </span>
                ),
              }))}
              ticked={said.lotIds}
              onChange={(lotIds) => change({ lotIds })}
            />
          )}
          {said.lotIds.length > 0 && (
            <CheckField
              label="put those lots into quarantine"
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
  const { reading } = stopOf(draft, placeId)
  const change = (part: Partial<typeof reading>) => {
    const time = reading.time === '' ? new Date().toTimeString().slice(0, 5) : reading.time
    dispatch({ kind: 'reading', placeId, change: { time, ...part } })
  }
  return (
    <div className="fields">
      <TextField
        label="Temperature"
        step={`${placeId}.temperature`}
        size="record"
        value={reading.temperature}
        hint="empty: not read"
        onChange={(temperature) => change({ temperature })}
        problem={figureProblem(reading.temperature)}
      />
      <SelectField
        label="In"
        size="record"
        value={reading.unit}
        options={UNITS}
        onChange={(unit) => change({ unit })}
      />
      <TextField
        label="Humidity, %"
        step={`${placeId}.humidity`}
        size="record"
        value={reading.humidity}
        onChange={(humidity) => change({ humidity })}
        problem={figureProblem(reading.humidity)}
      />
    </div>
  )
}
