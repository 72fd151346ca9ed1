import { Link } from 'wouter'
import { lotAddress, recallAddress } from '../../shared/addresses.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { isBegun } from '../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RecallLinks } from '../../shared/recalls/recall-links.tsx'
import { RecallForm, recallDraft } from './recall-form.tsx'
import { RecallPage } from './recall-page.tsx'
import { TracePicture } from './trace-picture.tsx'
import { TraceTable } from './trace-table.tsx'
import { Nameless, PeopleTable } from './who-has-some.tsx'
import './trace.css'

interface TraceScreenProps {
  readonly lotId?: number
  readonly recallId?: number
}

/** What hangs together with a lot and who has some; a recall and what came of it; or all recalls. */
export function TraceScreen({ lotId, recallId }: TraceScreenProps) {
  if (lotId !== undefined) return <OneTrace key={lotId} lotId={lotId} />
  if (recallId !== undefined) return <RecallPage key={recallId} recallId={recallId} />
  return <AllRecalls />
}

function AllRecalls() {
  const { t } = useTexts()
  return (
    <div className="page stack-4">
      <h1>{t('recall.recalls')}</h1>
      <RecallLinks none={t('recall.none')} />
    </div>
  )
}

function OneTrace({ lotId }: { readonly lotId: number }) {
  const { t } = useTexts()
  const read = useRead('lot.trace', { lotId })
  const { open, button, close } = useOpenForm<'recall'>()
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return <p className="soft waiting">{t('trace.opening')}</p>
  const { lotNumber, variety, lots, people, nameless } = read.data
  return (
    <div className="page trace stack-5">
      <header className="stack-2">
        <h1>{t('trace.title', { variety })}</h1>
        <p>{t('trace.lots', { lots: lots.length, people: people.length })}</p>
        <p className="row">
          <Link href={lotAddress(lotId)}>{t('trace.back', { lot: lotNumber })}</Link>
          <Link href={recallAddress()}>{t('trace.all-recalls')}</Link>
        </p>
      </header>
      <TracePicture {...read.data} />
      <section className="page-part stack-3">
        <p className="buttons">
          <button type="button" className="button" {...button('recall')}>
            {t('recall.open')}
            {open === null && isBegun(recallDraft(lotId)) && <> ({t('shelf.begun')})</>}
          </button>
        </p>
        {open === 'recall' && <RecallForm trace={read.data} onClose={() => close('recall')} />}
        <RecallLinks lotId={lotId} />
      </section>
      <section className="page-part stack-3">
        <h2>{t('trace.who')}</h2>
        {people.length === 0 && nameless.length === 0 && <p>{t('trace.nobody')}</p>}
        <PeopleTable people={people} />
        <Nameless nameless={nameless} />
      </section>
      <section className="page-part stack-3">
        <h2>{t('trace.table')}</h2>
        <TraceTable {...read.data} />
      </section>
    </div>
  )
}
