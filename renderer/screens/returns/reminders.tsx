import { useId, useState } from 'react'
import type { Reminder } from '../../../db/contract/withdrawal-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { PromiseMark } from '../../shared/promise-mark/promise-mark.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'

const AT_FIRST = 20

/** Who promised what by when and has not brought it yet, overdue first; each can be let go with a reason. */
export function Reminders() {
  const [limit, setLimit] = useState(AT_FIRST)
  const list = useRead('promise.list', { limit }, { keepLast: true })
  const id = useId()
  if (list.error) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined) return null
  const { promises, total, overdue } = list.data
  return (
    <section className="reminders stack-2" aria-labelledby={id}>
      <h2 id={id}>Still promised</h2>
      <p className="soft">{inWords(total, overdue)}</p>
      <ol className="ruled">
        {promises.map((promise) => (
          <li key={promise.withdrawalId} className="stack-1">
            <ReminderLine reminder={promise} />
          </li>
        ))}
      </ol>
      {promises.length < total && limit < 200 && (
        <button type="button" className="word-button" onClick={() => setLimit(200)}>
          show more of the {total}
        </button>
      )}
    </section>
  )
}

function inWords(total: number, overdue: number): string {
  if (total === 0)
    return 'Nobody has promised anything that is not back. A promise is noted when handing out.'
  const late = overdue === 0 ? 'none overdue' : `${overdue} overdue`
  return `${total === 1 ? 'One promise' : `${total} promises`}, ${late}`
}

function ReminderLine({ reminder }: { readonly reminder: Reminder }) {
  const format = useFormat()
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
      <p className="soft">{promise.by === null ? 'no day named' : `by ${format.day(promise.by)}`}</p>
      <p className="soft">
        for {lots.map(({ variety, words }) => `${variety} (${words})`).join(', ')}, {format.day(reminder.on)}
      </p>
      <p className="soft">{reach(reminder)}</p>
      {lettingGo ? (
        <WaiveForm reminder={reminder} onClose={() => setLettingGo(false)} />
      ) : (
        <button type="button" className="word-button" onClick={() => setLettingGo(true)}>
          let go<span className="only-aloud"> what {reminder.person} promised</span>
        </button>
      )}
    </>
  )
}

function reach({ mayWrite, email, phone, address }: Reminder): string {
  if (!mayWrite) return 'not to be written to'
  const ways = [email, phone, address].filter((way) => way !== '')
  return ways.length === 0 ? 'agreed to be written to, no address noted' : ways.join(' · ')
}

interface WaiveFormProps {
  readonly reminder: Reminder
  readonly onClose: () => void
}

function WaiveForm({ reminder, onClose }: WaiveFormProps) {
  const { withdrawalId } = reminder
  const form = useCardForm({
    draftName: `promise-${withdrawalId}`,
    empty: { reason: '' },
    writes: 'promise.waive',
    onClose,
  })
  return (
    <CardForm
      title={`Let go: ${reminder.promise.words}`}
      sendWord="Wait for it no longer"
      {...form.frame}
      onSend={() => form.send({ withdrawalId, reason: form.typed.reason })}
    >
      <TextField label="Why" size="record" {...form.field('reason')} placeholder="such as a failed harvest" />
    </CardForm>
  )
}
