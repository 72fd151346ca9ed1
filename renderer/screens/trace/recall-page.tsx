import { useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { lotAddress, recallAddress, traceAddress } from '../../shared/addresses.ts'
import { call } from '../../shared/client/call.ts'
import type { ProblemError } from '../../shared/client/problem-error.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { OutcomeForm, type OutcomeOf } from './outcome-form.tsx'
import { WhereKept } from './trace-table.tsx'
import { Nameless, PeopleTable } from './who-has-some.tsx'

type Recall = Value<'recall.get'>

/** What an outcome is noted of, and how that is called. */
interface Noting {
  readonly name: string
  readonly of: OutcomeOf
}

/** A recall: its lots as they are now, whom to tell and how, and what came of it line by line. */
export function RecallPage({ recallId }: { readonly recallId: number }) {
  const { t } = useTexts()
  const read = useRead('recall.get', { recallId })
  if (read.error !== null) {
    return (
      <div className="page stack-3">
        <ProblemText problem={read.error.problem} />
        <p>
          <Link href={recallAddress()}>{t('trace.all-recalls')}</Link>
        </p>
      </div>
    )
  }
  if (read.data === undefined) return <p className="soft waiting">{t('trace.opening')}</p>
  const { lotId, lotNumber, variety, on, reason, advice } = read.data
  return (
    <div className="page trace stack-5">
      <header className="stack-2">
        <h1>{t('recall.of', { lot: lotNumber })}</h1>
        <p>{t('recall.when', { variety, on: { day: on } })}</p>
        <FactList
          facts={[
            { name: t('recall.reason'), value: reason },
            { name: t('recall.advice'), value: <span className="recall-advice">{advice}</span> },
          ]}
        />
        <p className="row">
          <Link href={traceAddress(lotId)}>{t('recall.trace', { lot: lotNumber })}</Link>
          <Link href={recallAddress()}>{t('trace.all-recalls')}</Link>
        </p>
      </header>
      <RecallParts recall={read.data} />
    </div>
  )
}

function RecallParts({ recall }: { readonly recall: Recall }) {
  const { t } = useTexts()
  const [noting, setNoting] = useState<Noting | null>(null)
  const { recallId, lots, people, nameless, toWrite, inPerson, outcomes } = recall
  const cell = (name: string, of: OutcomeOf, came: Recall['outcomes']) => (
    <Outcomes name={name} outcomes={came} onNote={() => setNoting({ name, of })} />
  )
  const formOf = (kind: 'lotId' | 'personId' | 'the-whole') =>
    noting !== null &&
    (noting.of === 'the-whole' ? kind === 'the-whole' : kind in noting.of) && (
      <OutcomeForm key={noting.name} recallId={recallId} {...noting} onClose={() => setNoting(null)} />
    )
  return (
    <>
      <section className="page-part stack-3">
        <h2>{t('recall.lots')}</h2>
        <RowTable
          label={t('recall.lots')}
          rowHeads
          rows={lots}
          keyOf={({ lotId }) => lotId}
          columns={[
            [t('shelf.lot'), ({ lotId, lotNumber }) => <Link href={lotAddress(lotId)}>{lotNumber}</Link>],
            [t('recall.affected'), ({ affected }) => t(`recall.affected-${affected}`)],
            [t('shelf.holds'), ({ quantity }) => quantity.words],
            [
              t('recall.now'),
              (lot) => (
                <>
                  <WhereKept {...lot} />
                  {!lot.quarantined && <span className="own-line">{t('recall.released')}</span>}
                </>
              ),
            ],
            [t('recall.came'), ({ lotId, lotNumber, outcomes: came }) => cell(lotNumber, { lotId }, came)],
          ]}
        />
        {formOf('lotId')}
      </section>
      <section className="page-part stack-3">
        <h2>{t('recall.whom')}</h2>
        <p>{t('recall.how-many', { toWrite, inPerson })}</p>
        <Telling recallId={recallId} />
        <PeopleTable
          people={people}
          more={[[t('recall.came'), ({ personId, name, outcomes: came }) => cell(name, { personId }, came)]]}
        />
        {formOf('personId')}
        <Nameless nameless={nameless} />
      </section>
      <section className="page-part stack-3">
        <h2>{t('recall.as-a-whole')}</h2>
        {cell(t('recall.as-a-whole'), 'the-whole', outcomes)}
        {formOf('the-whole')}
      </section>
    </>
  )
}

interface OutcomesProps {
  readonly name: string
  readonly outcomes: Recall['outcomes']
  readonly onNote: () => void
}

/** What came of the recall for one of its lots or people, and the way to note more. */
function Outcomes({ name, outcomes, onNote }: OutcomesProps) {
  const { t } = useTexts()
  const format = useFormat()
  return (
    <>
      {outcomes.map(({ outcomeId, on, outcome, note }) => (
        <span key={outcomeId} className="own-line">
          <span className="soft">{format.day(on)}</span> {t(`recall.outcome-${outcome}`)}{' '}
          <span className="soft">{note}</span>
        </span>
      ))}
      <button
        type="button"
        className="word-button"
        aria-label={t('recall.add-outcome-for', { name })}
        onClick={onNote}
      >
        {t('recall.add-outcome')}
      </button>
    </>
  )
}

/** Letters to those who agreed to be written to, and the list of them. */
function Telling({ recallId }: { readonly recallId: number }) {
  const { t } = useTexts()
  const [open, setOpen] = useState(false)
  const letters = useRead('recall.render-letters', open ? { recallId } : null)
  const save = useMutation<Value<'recall.export'>, ProblemError>({
    mutationFn: () => call('recall.export', { recallId }),
    onSuccess: ({ fileName, csv }) => saveFile(fileName, 'text/csv', csv),
  })
  const error = (open ? letters.error : null) ?? save.error
  return (
    <>
      <p className="buttons">
        <button type="button" className="quiet-button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {t('recall.letters')}
        </button>
        <ActionButton className="quiet-button" off={save.isPending} onClick={() => save.mutate()}>
          {t('recall.save-list')}
        </ActionButton>
      </p>
      {error !== null && <ProblemText problem={error.problem} />}
      {open && letters.data !== undefined && (
        <PaperPages name={t('recall.letters-pages')} made={letters.data} />
      )}
    </>
  )
}
