import { useEffect, useRef } from 'react'
import type { IsoDate } from '../../../db/domain/dates/iso-date.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { KeyHints } from '../../shared/table-form/key-hints.tsx'
import { OtherVisits } from '../../shared/table-form/other-visits.tsx'
import { isNobodyYet } from '../../shared/table-form/person-draft.ts'
import { PersonFields } from '../../shared/table-form/person-fields.tsx'
import { SaveTrouble } from '../../shared/table-form/save-trouble.tsx'
import { StepForm } from '../../shared/table-form/step-form.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import type { DraftVisit } from '../../shared/table-form/use-draft.ts'
import { VisitPins } from '../../shared/table-form/visit-pins.tsx'
import { OutList } from './out-list.tsx'
import { Reminders } from './reminders.tsx'
import type { ReturnDraft, ReturnStep } from './return-draft.ts'
import { ReturnFields } from './return-fields.tsx'
import { ReturnedList, type TakenBack } from './returned-list.tsx'
import { useReturns } from './use-returns.ts'

interface ReturnTableProps {
  readonly visit: DraftVisit<ReturnDraft, ReturnStep>
  readonly draft: ReturnDraft
  readonly today: IsoDate
  readonly thisYear: number
  readonly taken: readonly TakenBack[]
  readonly onSaved: (saved: TakenBack, personId: number) => void
  readonly onNextPerson: () => void
}

/** Who brings it, what they have out, the lot being typed; beside it what came back and what is still promised. */
export function ReturnTable(props: ReturnTableProps) {
  const { visit, draft, today, thisYear, taken } = props
  const form = useRef<HTMLElement>(null)
  const table = useReturns({ ...props, form })
  const known = useRef(!isNobodyYet(draft.person))
  useEffect(() => {
    if (form.current) focusStepNamed(form.current, known.current ? 'lot' : 'person')
  }, [])
  const choosing = draft.line.parent === null && table.visits.length > 0
  return (
    <div className="table-screen">
      <div className="table-frame">
        <StepForm
          label="Take back"
          className="table-column stack-4"
          form={form}
          onEnd={table.save}
          onEndApart={table.backToLine}
          onSave={table.save}
          onMore={table.toPins}
          catches={table.catches}
        >
          <h1 className="only-aloud">Take back</h1>
          <OtherVisits
            others={visit.others}
            inWords={visitInWords}
            onGoOnWith={visit.goOnWith}
            onDiscard={visit.discard}
          />
          <PersonFields
            label="Who brings it?"
            person={draft.person}
            onChange={table.changePerson}
            problems={table.shown.person}
          />
          {choosing && (
            <OutList
              key={draft.person.personId}
              person={draft.person.text}
              visits={table.visits}
              onPick={table.pickOut}
              onSomethingElse={table.somethingElse}
            />
          )}
          <div className="table-card stack-3">
            <h2>{draft.saved === 0 ? 'What comes back' : 'What else comes back'}</h2>
            <ReturnFields
              line={draft.line}
              onChange={(change) => table.change({ kind: 'line', change })}
              onPick={table.pickLot}
              problems={table.shown.line}
              thisYear={thisYear}
            />
            <SaveTrouble refused={table.shown.refused} kept={visit.kept} />
            <p className="buttons">
              <ActionButton
                data-step="save"
                className="button table-button"
                off={table.saving}
                onClick={table.save}
              >
                Take it back
              </ActionButton>
              {draft.saved > 0 && (
                <button type="button" className="quiet-button table-button" onClick={table.nextPerson}>
                  Next person
                </button>
              )}
            </p>
          </div>
          <VisitPins
            pinned={draft}
            dayLabel="Came back"
            today={today}
            onChange={(change) => table.change({ kind: 'pins', change })}
          />
          <KeyHints more="where it goes" saves="takes it back" />
        </StepForm>
        <aside className="table-visit" aria-label="Back and still out">
          <div className="table-gathered stack-3">
            {taken.length > 0 && (
              <>
                <h2>Came back</h2>
                <ReturnedList taken={taken} />
              </>
            )}
            <Reminders />
          </div>
        </aside>
      </div>
    </div>
  )
}

function visitInWords(draft: ReturnDraft): string {
  const person = draft.person.text.trim() === '' ? 'somebody' : draft.person.text
  return draft.line.text.trim() === '' ? `${person} brings something` : `${person} brings ${draft.line.text}`
}
