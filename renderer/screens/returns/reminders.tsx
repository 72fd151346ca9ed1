import { useId, useState } from 'react'
import type { Reminder } from '../../../db/contract/withdrawal-operations.ts'
import { message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { ALOUD } from '../../shared/format/aloud.tsx'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { PromiseMark } from '../../shared/promise-mark/promise-mark.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'

const AT_FIRST = 20

/** Who promised what by when and has not brought it yet, overdue first; each can be let go with a reason. */
export function Reminders() {
  const { t } = useTexts()
  const [limit, setLimit] = useState(AT_FIRST)
  const list = useRead('promise.list', { limit }, { keepLast: true })
  const id = useId()
  if (list.error) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined) return null
  const { promises, total, overdue } = list.data
  return (
    <section className="reminders stack-2" aria-labelledby={id}>
      <h2 id={id}>{t('returns.reminders.title')}</h2>
      <p className="soft">
        {total === 0 ? t('returns.reminders.none') : t('returns.reminders.count', { total, overdue })}
      </p>
      <ol className="ruled">
        {promises.map((promise) => (
          <li key={promise.withdrawalId} className="stack-1">
            <ReminderLine reminder={promise} />
          </li>
        ))}
      </ol>
      {promises.length < total && limit < 200 && (
        <button type="button" className="word-button" onClick={() => setLimit(200)}>
          {t('returns.reminders.more', { total })}
        </button>
      )}
    </section>
  )
}

function ReminderLine({ reminder }: { readonly reminder: Reminder }) {
  const { t, pieces } = useTexts()
  const [lettingGo, setLettingGo] = useState(false)
  const { promise, lots } = reminder
  return (
    <>
      <p className="row">
        <span>
          <strong>{reminder.person}</strong>
          {reminder.town === '' ? '' : `, ${reminder.town}`}
        </span>
        <PromiseMark state={promise.state} />
      </p>
      <p>‘{promise.words}’</p>
      {promise.by !== null && (
        <p className="soft">{t('returns.reminders.by', { day: { day: promise.by } })}</p>
      )}
      <p className="soft">
        {t('returns.reminders.for', {
          lots: { list: lots.map(({ variety, words }) => `${variety} (${words})`) },
          day: { day: reminder.on },
        })}
      </p>
      <p className="soft">{reach(reminder, t)}</p>
      {lettingGo ? (
        <WaiveForm reminder={reminder} onClose={() => setLettingGo(false)} />
      ) : (
        <button type="button" className="word-button" onClick={() => setLettingGo(true)}>
          {pieces(message('returns.reminders.let-go', { person: reminder.person }), ALOUD)}
        </button>
      )}
    </>
  )
}

function reach({ mayWrite, email, phone, address }: Reminder, t: Texts['text']): string {
  if (!mayWrite) return t('returns.reminders.not-written-to')
  const ways = [email, phone, address].filter((way) => way !== '')
  return ways.length === 0 ? t('returns.reminders.no-address') : ways.join(' · ')
}

interface WaiveFormProps {
  readonly reminder: Reminder
  readonly onClose: () => void
}

function WaiveForm({ reminder, onClose }: WaiveFormProps) {
  const { t } = useTexts()
  const { withdrawalId } = reminder
  const form = useCardForm({
    draftName: `promise-${withdrawalId}`,
    empty: { reason: '' },
    writes: 'promise.waive',
    onClose,
  })
  return (
    <CardForm
      title={t('returns.reminders.let-go-title', { promise: reminder.promise.words })}
      sendWord={t('returns.reminders.let-go-send')}
      {...form.frame}
      onSend={() => form.send({ withdrawalId, reason: form.typed.reason })}
    >
      <TextField
        label={t('returns.reminders.why')}
        size="record"
        {...form.field('reason')}
        placeholder={t('returns.reminders.why-placeholder')}
      />
    </CardForm>
  )
}
