import { useState } from 'react'
import { Link } from 'wouter'
import type { PlanLine } from '../../../db/contract/season-plan-operations.ts'
import type { Override } from '../../../db/contract/withdrawal-operations.ts'
import { chanceInWords } from '../../../db/domain/needs/assurance.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'
import { seasonNotesAddress } from './grow-out-words.ts'

const NOTHING_YET = 'nothing went out to be grown'

/** The seed of one line to its grower, from the right lot, by one key; what wants a reason asks for one first. */
export function HandOutSeed({ line, isSaved }: { readonly line: PlanLine; readonly isSaved: boolean }) {
  const write = useWrite('withdrawal.record')
  const today = useToday()
  const [despite, setDespite] = useState<readonly Override[]>([])
  const [reason, setReason] = useState('')
  const { sow, growerId } = line
  const { growOutId } = line
  const became = line.became === NOTHING_YET ? null : <p className="soft">{line.became}</p>
  if (!isSaved || growOutId === null) return became
  if (line.seedOut) {
    return (
      <>
        {became}
        <p>
          <Link href={seasonNotesAddress(growOutId)}>
            Note its season<span className="only-aloud">: {line.variety}</span>
          </Link>
        </p>
      </>
    )
  }
  if (sow === null) return <p className="soft">No seed can be handed out: {line.noSeed}.</p>
  if (growerId === null) return <p className="soft">Name the garden’s grower to hand out its seed.</p>
  const seed = sow.lots.map(({ seeds, lotNumber }) => `${seeds} of ${lotNumber}`).join(' and ')
  const give = (heeded: readonly Override[]) =>
    write.mutate(
      {
        person: { personId: growerId },
        on: today,
        purpose: 'grow-out',
        lines: sow.lots.map(({ lotId, seeds }) => ({ lotId, amount: `${seeds} seeds` })),
        growOutId,
        promised: `seed of ${line.variety}`,
        despite: [...heeded],
        reason,
      },
      {
        onError: ({ problem }) => {
          if (problem.code === 'caution') setDespite([...heeded, ...(problem.choices as Override[])])
        },
      },
    )
  const problem = write.error?.problem
  if (despite.length > 0) {
    return (
      <CardForm
        title={`Hand ${seed} to ${line.grower} all the same?`}
        sendWord="Hand it out"
        busy={write.isPending || reason.trim() === ''}
        error={write.error}
        onSend={() => give(despite)}
        onClose={() => {
          setDespite([])
          write.reset()
        }}
      >
        <TextField
          label="Why all the same"
          step="reason"
          size="record"
          value={reason}
          onChange={setReason}
          hint="such as: the working lot is empty"
        />
      </CardForm>
    )
  }
  return (
    <>
      {became}
      <p>
        <ActionButton className="quiet-button" off={write.isPending} onClick={() => give([])}>
          {`Hand ${seed} to ${line.grower}`}
        </ActionButton>
        <span className="soft">
          {sow.enough ? ` all plants come up ${chanceInWords(sow.chance)}` : ' all that may be risked'}
        </span>
      </p>
      {problem !== undefined && <ProblemText problem={problem} />}
    </>
  )
}
