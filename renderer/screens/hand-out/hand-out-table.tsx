import { useEffect, useRef } from 'react'
import { Link } from 'wouter'
import { packetsInWords } from '../../../db/domain/amounts/packets.ts'
import type { IsoDate } from '../../../db/domain/dates/iso-date.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { GatheredLines } from '../../shared/table-form/gathered-lines.tsx'
import { KeyHints } from '../../shared/table-form/key-hints.tsx'
import { LOTS } from '../../shared/table-form/lot-source.tsx'
import { OtherVisits } from '../../shared/table-form/other-visits.tsx'
import { isNobodyYet } from '../../shared/table-form/person-draft.ts'
import { PersonFields } from '../../shared/table-form/person-fields.tsx'
import { SaveTrouble } from '../../shared/table-form/save-trouble.tsx'
import { StepForm } from '../../shared/table-form/step-form.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { DraftVisit } from '../../shared/table-form/use-draft.ts'
import type { HandOutDraft, HandOutStep } from './hand-out-draft.ts'
import { type HandedOut, HandedOutList } from './handed-out.tsx'
import { AfterOut, LotStock } from './lot-stock.tsx'
import { PacketInWords } from './packet-in-words.tsx'
import { useHandOut } from './use-hand-out.ts'
import { VisitTermsFields } from './visit-terms.tsx'

interface HandOutTableProps {
  readonly visit: DraftVisit<HandOutDraft, HandOutStep>
  readonly draft: HandOutDraft
  readonly today: IsoDate
  readonly last: HandedOut | null
  readonly onSaved: (saved: HandedOut) => void
}

/** The member, the packet being typed, and the visit so far. */
export function HandOutTable(props: HandOutTableProps) {
  const { visit, draft, today, last } = props
  const form = useRef<HTMLElement>(null)
  const table = useHandOut({ ...props, form })
  const memberKnown = useRef(!isNobodyYet(draft.member))
  useEffect(() => {
    if (form.current) focusStepNamed(form.current, memberKnown.current ? 'lot' : 'person')
  }, [])
  const { listed } = draft.lines
  return (
    <StepForm
      label="Hand out"
      className="table-screen"
      form={form}
      onEnd={table.listLine}
      onEndApart={table.backToLine}
      onSave={table.save}
      onMore={table.toPromise}
      catches={table.catches}
    >
      <div className="table-frame">
        <div className="table-column stack-4">
          <h1 className="only-aloud">Hand out</h1>
          <p className="table-beside row">
            <Link href="/hand-out/paper">Type in a paper sheet</Link>
          </p>
          <OtherVisits
            others={visit.others}
            inWords={visitInWords}
            onGoOnWith={visit.goOnWith}
            onDiscard={visit.discard}
          />
          <PersonFields
            label="Who takes it?"
            nobody="Nobody is named"
            nobodyMeans="The packets go out without a name."
            person={draft.member}
            onChange={(change) => table.change({ kind: 'member', change })}
            problems={table.shown.member}
          />
          <PacketCard draft={draft} table={table} />
          <KeyHints more="what comes back" />
        </div>
        <aside className="table-visit" aria-label="This visit">
          <h2>This visit</h2>
          <GatheredLines
            lines={draft.lines}
            nameOf={(line) => line.lot?.variety ?? line.text}
            inWords={(line) => (
              <PacketInWords
                line={line}
                previewed={table.previewed.ofLine.get(line.id)}
                reason={draft.reason}
              />
            )}
            whileEmpty={
              last ? (
                <HandedOutList last={last} />
              ) : (
                <p className="soft">
                  The packets of this visit gather here. Enter after the amount lists one.
                </p>
              )
            }
            onChangeLine={table.changeLine}
            onStep={table.change}
          />
          <p className="table-total" role="status">
            {listed.length === 0 ? '' : packetsInWords(listed.map(({ amount }) => amount))}
          </p>
          <VisitTermsFields
            draft={draft}
            today={today}
            onChange={(change) => table.change({ kind: 'visit', change })}
          />
          <SaveTrouble refused={table.shown.refused} kept={visit.kept} />
          <ActionButton className="button table-button" off={table.saving} onClick={table.save}>
            Save the visit
          </ActionButton>
        </aside>
      </div>
    </StepForm>
  )
}

interface PacketCardProps {
  readonly draft: HandOutDraft
  readonly table: ReturnType<typeof useHandOut>
}

/** One lot and how much of it goes out, with what would remain. */
function PacketCard({ draft, table }: PacketCardProps) {
  const { line, listed, changing } = draft.lines
  const at = listed.findIndex((each) => each.id === changing)
  const previewed = table.previewed.ofLine.get(line.id)
  const cautions = [...(previewed?.cautions ?? []), ...table.previewed.cautions]
  const refused = previewed?.problem
  return (
    <div className="table-card stack-3">
      <h2>{at < 0 ? `Packet ${listed.length + 1}` : `Packet ${at + 1}, being changed`}</h2>
      <SuggestField
        label="Lot"
        step="lot"
        size="table"
        text={line.text}
        chosen={line.lot !== null}
        onText={(text) => table.change({ kind: 'line', change: { text, lot: null } })}
        source={LOTS}
        onPick={table.pickLot}
        nothingFound={(text) =>
          `No lot to hand out fits ${text}. What is empty, in quarantine or kept in reserve is not offered.`
        }
        placeholder="scan, number, or a few letters"
        problem={table.shown.line.lot ?? (refused?.field?.endsWith('.lotId') ? refused.sentence : undefined)}
        words={line.lot && <LotStock lot={line.lot} barElsewhere={previewed?.left != null} />}
        spoken={line.lot === null ? '' : `${line.text}. ${line.lot.why}`}
      />
      <AmountField
        label="Amount"
        step="amount"
        size="table"
        value={line.amount}
        onChange={(amount) => table.change({ kind: 'line', change: { amount } })}
        lotId={line.lot?.lotId}
        problem={
          table.shown.line.amount ?? (refused?.field?.endsWith('.amount') ? refused.sentence : undefined)
        }
        offered={table.previewed.fresh && refused ? refused.choices : []}
        placeholder="1 packet of 25, 12.5 g, 30 seeds"
        after={previewed && <AfterOut previewed={previewed} />}
      />
      {cautions.length > 0 && (
        <>
          {cautions.map(({ despite, sentence }) => (
            <p key={despite} className="table-field-warning">
              {sentence}
            </p>
          ))}
          <TextField
            label="Why all the same?"
            step={table.previewed.fresh ? 'reason' : undefined}
            value={draft.reason}
            onChange={(reason) => table.change({ kind: 'visit', change: { reason } })}
            hint="The reason is kept in the book. Esc steps back to give less."
            problem={table.shown.reason}
          />
        </>
      )}
      <p className="buttons">
        <button type="button" className="quiet-button table-button" onClick={table.listLine}>
          {changing === null ? 'List this packet' : 'List it as changed'}
        </button>
      </p>
    </div>
  )
}

function visitInWords(draft: HandOutDraft): string {
  const member = draft.member.text.trim() === '' ? 'a member' : draft.member.text
  const { listed } = draft.lines
  if (listed.length === 0) return `${member}, no packet listed yet`
  return `${packetsInWords(listed.map(({ amount }) => amount))} for ${member}`
}
