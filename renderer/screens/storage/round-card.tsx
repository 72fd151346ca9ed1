import { useRef } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ORDER_KEY } from '../../shared/format/keys.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
  const visit = useDraft<RoundDraft, RoundStep>(RULES)
  const due = useRead('round.list-due', {})
  if (due.error !== null) return <ProblemText problem={due.error.problem} />
  if (due.data === undefined || visit.draft === null)
    return <p className="soft waiting">{t('storage.opening')}</p>
  const { places, cautions, unvisited } = due.data
  return (
    <Card className="card" name={t('storage.round')}>
      <header className="card-head">
        <h2 tabIndex={-1}>{t('storage.round')}</h2>
        <p>{places.length === 0 ? t('storage.no-round-yet') : t('storage.round-how')}</p>
        {places.length > 0 && <Link href={ROUND_SHEET}>{t('storage.round-sheet-to-print')}</Link>}
      </header>
      <div className="pane-part" hidden={cautions.length === 0 && visit.others.length === 0}>
        {cautions.map((caution) => (
          <p key={caution} className="caution">
            {caution}
          </p>
        ))}
        <OtherVisits
          visit={visit}
          inWords={(draft) => t('storage.other-round', { places: placesOf(draft).length })}
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
  const { t } = useTexts()
  if (places.length === 0) return null
  return (
    <section className="pane-part" aria-label={t('storage.on-no-round')}>
      <h3>{t('storage.on-no-round')}</h3>
      <p className="soft">{t('storage.on-no-round-todo')}</p>
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
  const { t } = useTexts()
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
      label={t('storage.what-was-looked-at')}
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
          label={t('storage.walked-by')}
          step="walked-by"
          size="record"
          value={draft.walkedBy}
          hint={t('storage.may-be-empty')}
          onChange={(walkedBy) => dispatch({ kind: 'terms', change: { walkedBy } })}
        />
        {write.error !== null && <ProblemText problem={write.error.problem} />}
        {!kept && <p className="caution">{t('storage.not-kept')}</p>}
        <div className="buttons">
          <ActionButton className="button" off={write.isPending || places.length === 0} onClick={save}>
            {t('storage.write-round')}
          </ActionButton>
          <span className="soft">
            {places.length === 0
              ? t('storage.nothing-ticked')
              : t('storage.round-so-far', {
                  ticked: places.length,
                  places: due.places.length,
                  keys: `${ORDER_KEY}+Enter`,
                })}
          </span>
        </div>
      </div>
    </StepForm>
  )
}

function RoundsWalked() {
  const { t } = useTexts()
  const walked = useRead('round.list', { limit: 12 }).data
  if (walked === undefined || walked.rounds.length === 0) return null
  return (
    <section className="pane-part" aria-label={t('storage.rounds-walked')}>
      <h3>{t('storage.rounds-walked')}</h3>
      <ul className="bullets">
        {walked.rounds.map(({ entryId, on, walkedBy, places, findings }) => (
          <li key={entryId}>
            {t('storage.round-walked', {
              day: { day: on },
              who: walkedBy === '' ? 'nobody' : 'somebody',
              name: walkedBy,
              places,
              well: findings.length === 0 ? 'yes' : 'no',
            })}
            {findings.length > 0 && (
              <ul className="bullets">
                {findings.map(({ placeId, look, path, name, note, lots }) => (
                  <li key={`${placeId} ${look}`}>
                    {t('storage.finding-in-place', { look: capital(name), place: path, note })}{' '}
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
          {t('storage.latest-rounds', { shown: walked.rounds.length, rounds: walked.total })}
        </p>
      )}
    </section>
  )
}
