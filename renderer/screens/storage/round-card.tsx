import { useRef } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ORDER_KEY } from '../../shared/format/keys.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'
import { OtherVisits } from '../../shared/table-form/other-visits.tsx'
import { StepForm } from '../../shared/table-form/step-form.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { type DraftVisit, useDraft } from '../../shared/table-form/use-draft.ts'
import { placeAddress, ROUND_SHEET } from './place-row.tsx'
import {
  emptyRound,
  isBlankRound,
  placesOf,
  type RoundDraft,
  type RoundStep,
  stepOfField,
  stepRound,
  unreadFigure,
} from './round-draft.ts'
import { RoundPlace } from './round-stop.tsx'

const RULES = { kind: 'round', blank: emptyRound, step: stepRound, isBlank: isBlankRound } as const

/** A round through the places: what is due, ticked on screen, and the rounds that were walked. */
export function RoundCard() {
  const visit = useDraft<RoundDraft, RoundStep>(RULES)
  const due = useRead('round.list-due', {})
  if (due.error !== null) return <ProblemText problem={due.error.problem} />
  if (due.data === undefined || visit.draft === null) return <p className="soft waiting">Opening…</p>
  const { places, cautions, unvisited } = due.data
  return (
    <Card className="card" name="Round">
      <header className="card-head">
        <h2 tabIndex={-1}>Round</h2>
        <p>
          {places.length === 0
            ? 'No round goes anywhere yet. What it is meant for, on the card of a place, says how often one goes there.'
            : 'Walk from place to place, look, and tick. Enter goes on, Space ticks, arrows choose.'}
        </p>
        {places.length > 0 && <Link href={ROUND_SHEET}>Round sheet to print</Link>}
      </header>
      <div className="pane-part" hidden={cautions.length === 0 && visit.others.length === 0}>
        {cautions.map((caution) => (
          <p key={caution} className="caution">
            {caution}
          </p>
        ))}
        <OtherVisits
          visit={visit}
          inWords={(draft) => {
            const walked = placesOf(draft).length
            return walked === 1 ? 'a round, one place looked at' : `a round, ${walked} places looked at`
          }}
        />
      </div>
      <Unvisited places={unvisited} />
      {places.length > 0 && <RoundForm visit={visit} draft={visit.draft} due={due.data} />}
      <RoundsWalked />
    </Card>
  )
}

/** Places with lots that are on no round, each leading to where that is said. */
function Unvisited({ places }: { readonly places: Value<'round.list-due'>['unvisited'] }) {
  if (places.length === 0) return null
  return (
    <section className="pane-part" aria-label="On no round">
      <h3>On no round</h3>
      <p className="soft">Open a place and say how often under ‘What it is meant for’.</p>
      <ul className="bullets">
        {places.map(({ placeId, path }) => (
          <li key={placeId}>
            <Link href={placeAddress(placeId)}>{path}</Link>
          </li>
        ))}
      </ul>
    </section>
  )
}

interface RoundFormProps {
  readonly visit: DraftVisit<RoundDraft, RoundStep>
  readonly draft: RoundDraft
  readonly due: Value<'round.list-due'>
}

function RoundForm({ visit: { dispatch, kept }, draft, due }: RoundFormProps) {
  const form = useRef<HTMLElement>(null)
  const today = useToday()
  const write = useWrite('round.record')
  const places = placesOf(draft)
  const focus = (step: string | null) => {
    if (step !== null && form.current !== null) focusStepNamed(form.current, step)
  }
  const save = () => {
    if (write.isPending || places.length === 0) return
    const unread = unreadFigure(draft)
    if (unread !== null) return focus(unread)
    write.mutate(
      { key: draft.key, on: draft.on || today, walkedBy: draft.walkedBy, places },
      {
        onSuccess: () => {
          dispatch({ kind: 'next', key: crypto.randomUUID() })
          form.current?.closest('article')?.querySelector<HTMLElement>('h2')?.focus()
        },
        onError: ({ problem }) => focus(stepOfField(problem.field ?? '', places)),
      },
    )
  }
  return (
    <StepForm
      label="What was looked at"
      form={form}
      onEnd={() => undefined}
      onEndApart={() => undefined}
      onSave={save}
      onMore={() => undefined}
    >
      {due.places.map((stop) => (
        <RoundPlace key={stop.placeId} stop={stop} draft={draft} dispatch={dispatch} />
      ))}
      <div className="pane-part">
        <DayField value={draft.on || today} onChange={(on) => dispatch({ kind: 'terms', change: { on } })} />
        <TextField
          label="Walked by"
          step="walked-by"
          size="record"
          value={draft.walkedBy}
          hint="may be empty"
          onChange={(walkedBy) => dispatch({ kind: 'terms', change: { walkedBy } })}
        />
        {write.error !== null && <ProblemText problem={write.error.problem} />}
        {!kept && (
          <p className="caution">What is ticked could not be kept just now. Do not close the window.</p>
        )}
        <div className="buttons">
          <ActionButton className="button" off={write.isPending || places.length === 0} onClick={save}>
            Write the round down
          </ActionButton>
          <span className="soft">
            {places.length === 0
              ? 'Nothing is ticked yet.'
              : `${places.length} of ${due.places.length} places. ${ORDER_KEY}+Enter writes it down.`}
          </span>
        </div>
      </div>
    </StepForm>
  )
}

function RoundsWalked() {
  const format = useFormat()
  const walked = useRead('round.list', { limit: 12 }).data
  if (walked === undefined || walked.rounds.length === 0) return null
  return (
    <section className="pane-part" aria-label="Rounds walked">
      <h3>Rounds walked</h3>
      <ul className="bullets">
        {walked.rounds.map(({ entryId, on, walkedBy, places, findings }) => (
          <li key={entryId}>
            {format.day(on)}
            {walkedBy === '' ? '' : `, ${walkedBy}`}: {places === 1 ? 'one place' : `${places} places`}
            {findings.length === 0 && ', all is well'}
            {findings.length > 0 && (
              <ul className="bullets">
                {findings.map(({ placeId, look, path, name, note, lots }) => (
                  <li key={`${placeId} ${look}`}>
                    {capital(name)} in {path}: {note}{' '}
                    {lots.map(({ lotId, lotNumber }) => (
                      <Link key={lotId} href={lotAddress(lotId)}>
                        {lotNumber}{' '}
                      </Link>
                    ))}
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
      {walked.total > walked.rounds.length && (
        <p className="soft">
          The latest {walked.rounds.length} of {walked.total}.
        </p>
      )}
    </section>
  )
}
