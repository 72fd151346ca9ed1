import { useEffect, useRef } from 'react'
import { Link } from 'wouter'
import type { IsoDate } from '../../../db/domain/dates/iso-date.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { GatheredLines } from '../../shared/table-form/gathered-lines.tsx'
import { KeyHints } from '../../shared/table-form/key-hints.tsx'
import { OtherVisits } from '../../shared/table-form/other-visits.tsx'
import { isNobodyYet } from '../../shared/table-form/person-draft.ts'
import { PersonFields } from '../../shared/table-form/person-fields.tsx'
import { SaveTrouble } from '../../shared/table-form/save-trouble.tsx'
import { StepForm } from '../../shared/table-form/step-form.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import type { DraftVisit } from '../../shared/table-form/use-draft.ts'
import { VisitPins } from '../../shared/table-form/visit-pins.tsx'
import { DecisionButtons, DecisionFields } from './gift-decision-fields.tsx'
import { GiftFields } from './gift-fields.tsx'
import { GiftInWords } from './gift-in-words.tsx'
import { MoreFields } from './more-fields.tsx'
import type { TakeInDraft, TakeInStep } from './take-in-draft.ts'
import type { SavedVisit } from './taken-in.tsx'
import { useTakeIn } from './use-take-in.ts'

interface TakeInTableProps {
  readonly visit: DraftVisit<TakeInDraft, TakeInStep>
  readonly draft: TakeInDraft
  readonly today: IsoDate
  readonly thisYear: number
  readonly onSaved: (saved: SavedVisit) => void
}

/** The donor, the gift being typed, and the visit so far. */
export function TakeInTable(props: TakeInTableProps) {
  const { visit, draft, today, thisYear } = props
  const { dispatch } = visit
  const form = useRef<HTMLElement>(null)
  const table = useTakeIn({ ...props, form })
  const donorKnown = useRef(!isNobodyYet(draft.donor))
  useEffect(() => {
    if (form.current) focusStepNamed(form.current, donorKnown.current ? 'variety' : 'person')
  }, [])
  const listed = draft.gifts.listed.length
  return (
    <StepForm
      label="Take in"
      className="table-screen"
      form={form}
      onEnd={table.listGift}
      onEndApart={table.backToGift}
      onSave={table.save}
      onMore={table.openMore}
      catches={table.catches}
    >
      <div className="table-frame">
        <div className="table-column stack-4">
          <h1 className="only-aloud">Take in</h1>
          <p className="table-beside row">
            <Link href="/take-in/waiting">Gifts waiting</Link>
            <Link href="/take-in/list">From a list</Link>
          </p>
          <OtherVisits
            others={visit.others}
            inWords={visitInWords}
            onGoOnWith={visit.goOnWith}
            onDiscard={visit.discard}
          />
          <PersonFields
            label="Who brings it?"
            nobody="Nobody knows"
            nobodyMeans="The gifts will stand in the book without a donor."
            person={draft.donor}
            onChange={(change) => table.change({ kind: 'donor', change })}
            problems={table.problems.donor}
          />
          <div className="table-card stack-3">
            <h2>{giftHeading(draft)}</h2>
            <GiftFields
              line={draft.gifts.line}
              onChange={(change) => table.change({ kind: 'line', change })}
              problems={table.problems.gift}
              thisYear={thisYear}
            />
            {draft.gifts.line.more && (
              <MoreFields
                line={draft.gifts.line}
                onChange={(change) => table.change({ kind: 'line', change })}
                problems={table.problems.gift}
              />
            )}
            <DecisionFields
              line={draft.gifts.line}
              onChange={(change) => table.change({ kind: 'line', change })}
              problems={table.problems.gift}
            />
            <p className="buttons">
              <button type="button" className="quiet-button table-button" onClick={table.listGift}>
                {draft.gifts.changing === null ? 'List this gift' : 'List it as changed'}
              </button>
              <DecisionButtons decision={draft.gifts.line.decision} onDecide={table.decide} />
              {!draft.gifts.line.more && (
                <button type="button" className="word-button table-button" onClick={table.openMore}>
                  more about it
                </button>
              )}
            </p>
          </div>
          <KeyHints more="more about it" />
        </div>
        <aside className="table-visit" aria-label="This visit">
          <h2>This visit</h2>
          <VisitPins
            pinned={draft}
            dayLabel="Received"
            today={today}
            onChange={(change) => dispatch({ kind: 'visit', change })}
          />
          <GatheredLines
            lines={draft.gifts}
            nameOf={(gift) => gift.variety}
            inWords={(gift) => <GiftInWords gift={gift} thisYear={thisYear} />}
            whileEmpty={
              <p className="soft">
                The gifts of this visit gather here. Enter after the last field lists one.
              </p>
            }
            onChangeLine={table.changeGift}
            onStep={table.change}
          />
          <p className="table-total" role="status">
            {listed === 0 ? '' : listed === 1 ? '1 gift' : `${listed} gifts`}
          </p>
          <SaveTrouble refused={table.refused} kept={visit.kept} />
          <ActionButton className="button table-button" off={table.saving} onClick={table.save}>
            Save the visit
          </ActionButton>
        </aside>
      </div>
    </StepForm>
  )
}

function giftHeading(draft: TakeInDraft): string {
  const at = draft.gifts.listed.findIndex((gift) => gift.id === draft.gifts.changing)
  return at < 0 ? `Gift ${draft.gifts.listed.length + 1}` : `Gift ${at + 1}, being changed`
}

function visitInWords(draft: TakeInDraft): string {
  const donor = draft.donor.text.trim() === '' ? 'a donor' : draft.donor.text
  const { length } = draft.gifts.listed
  if (length === 0) return `${donor}, no gift listed yet`
  return `${length === 1 ? '1 gift' : `${length} gifts`} from ${donor}`
}
