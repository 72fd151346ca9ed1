import type { Texts } from '../../../db/messages/texts.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { OtherVisits } from '../../shared/table-form/other-visits.tsx'
import { personNamed } from '../../shared/table-form/person-draft.ts'
import { PersonFields } from '../../shared/table-form/person-fields.tsx'
import { StepForm } from '../../shared/table-form/step-form.tsx'
import { type OpenTable, TableDraft } from '../../shared/table-form/table-draft.tsx'
import { KeyHints, SaveTrouble } from '../../shared/table-form/table-frame.tsx'
import { VisitPins } from '../../shared/table-form/visit-pins.tsx'
import { OutList } from './out-list.tsx'
import { Reminders } from './reminders.tsx'
import { emptyReturn, isBlankReturn, type ReturnDraft } from './return-draft.ts'
import { ReturnFields } from './return-fields.tsx'
import { ReturnedList } from './returned-list.tsx'
import './returns.css'
import { useReturns } from './use-returns.ts'

const RULES = { kind: 'return', blank: emptyReturn, isBlank: isBlankReturn } as const

/** Take back: what somebody grew from the library's seed, as a new lot, and the promises that it keeps. */
export function ReturnsScreen() {
  return <TableDraft<ReturnDraft> rules={RULES}>{(open) => <ReturnTable open={open} />}</TableDraft>
}

/** Who brings it, what they have out, the lot being typed; beside it what came back and what is still promised. */
function ReturnTable({ open }: { readonly open: OpenTable<ReturnDraft> }) {
  const { t } = useTexts()
  const work = useReturns(open)
  const { table, taken } = work
  const { visit, draft, shown } = table
  const choosing = draft.line.parent === null && work.visits.length > 0
  return (
    <div className="table-screen">
      <div className="table-frame">
        <StepForm
          label={t('returns.title')}
          className="table-column stack-4"
          form={table.form}
          onEnd={work.save}
          onEndApart={() => table.focus('save')}
          onSave={work.save}
          onMore={() => table.focus('place')}
          catches={table.held.catches}
        >
          <h1 className="only-aloud">{t('returns.title')}</h1>
          <OtherVisits visit={visit} inWords={(draft) => visitInWords(draft, t)} />
          <PersonFields
            label={t('returns.who')}
            person={draft.person}
            onChange={work.setPerson}
            problems={shown.problems}
          />
          {choosing && (
            <OutList
              key={draft.person.personId}
              person={draft.person.text}
              visits={work.visits}
              onPick={work.pickOut}
              onSomethingElse={() => table.focus('lot')}
            />
          )}
          <div className="table-card stack-3">
            <h2>{t(draft.saved === 0 ? 'returns.what' : 'returns.what-else')}</h2>
            <ReturnFields
              line={draft.line}
              onChange={(change) => table.setIn('line', change)}
              onPick={work.pickLot}
              problems={shown.problems}
              thisYear={open.thisYear}
              holdKey={table.held.holdKey}
            />
            <SaveTrouble refused={shown.refused} kept={visit.kept} />
            <p className="buttons">
              <ActionButton
                data-step="save"
                className="button table-button"
                off={table.saving}
                onClick={work.save}
              >
                {t('returns.save')}
              </ActionButton>
              {draft.saved > 0 && (
                <button type="button" className="quiet-button table-button" onClick={work.nextPerson}>
                  {t('returns.next')}
                </button>
              )}
            </p>
          </div>
          <VisitPins
            pinned={draft}
            dayLabel={t('returns.came-back')}
            today={open.today}
            onChange={table.set}
          />
          <KeyHints more={t('returns.keys-more')} saves={t('returns.keys-save')} />
        </StepForm>
        <aside className="table-visit" aria-label={t('returns.beside')}>
          <div className="table-gathered stack-3">
            {taken.length > 0 && (
              <>
                <h2>{t('returns.came-back')}</h2>
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

function visitInWords({ person, line }: ReturnDraft, t: Texts['text']): string {
  const who = personNamed(person, t('returns.somebody'))
  return line.text.trim() === ''
    ? t('returns.brings-something', { who })
    : t('returns.brings', { who, what: line.text })
}
