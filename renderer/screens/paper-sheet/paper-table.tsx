import { useEffect, useRef } from 'react'
import { Link } from 'wouter'
import { useFormat } from '../../shared/format/use-format.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { GatheredLines } from '../../shared/table-form/gathered-lines.tsx'
import { KeyHints } from '../../shared/table-form/key-hints.tsx'
import { LOTS } from '../../shared/table-form/lot-source.tsx'
import { OtherVisits } from '../../shared/table-form/other-visits.tsx'
import { PersonFields } from '../../shared/table-form/person-fields.tsx'
import { SaveTrouble } from '../../shared/table-form/save-trouble.tsx'
import { StepForm } from '../../shared/table-form/step-form.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { DraftVisit } from '../../shared/table-form/use-draft.ts'
import { newOnSheet, type PaperDraft, type PaperStep, withLot } from './paper-draft.ts'
import { useLeftBySheet } from './use-left.ts'
import { usePaper } from './use-paper.ts'

interface PaperTableProps {
  readonly visit: DraftVisit<PaperDraft, PaperStep>
  readonly draft: PaperDraft
  readonly today: string
  /** How many lines the last sheet had, or null. */
  readonly last: number | null
  readonly onSaved: (lines: number) => void
}

/** The day of the sheet, the line being typed, and the lines so far to look over. */
export function PaperTable(props: PaperTableProps) {
  const { visit, draft, last } = props
  const format = useFormat()
  const form = useRef<HTMLElement>(null)
  const table = usePaper({ ...props, dispatch: visit.dispatch, form })
  const dayKnown = useRef(draft.on !== '')
  useEffect(() => {
    if (form.current) focusStepNamed(form.current, dayKnown.current ? 'person' : 'on')
  }, [])
  const { listed } = draft.lines
  return (
    <StepForm
      label="Paper sheet"
      className="table-screen"
      form={form}
      onEnd={table.listLine}
      onEndApart={() => table.focus('person')}
      onSave={table.save}
      onMore={() => table.focus('on')}
      catches={table.catches}
    >
      <div className="table-frame">
        <div className="table-column stack-4">
          <OtherVisits
            others={visit.others}
            inWords={sheetInWords}
            onGoOnWith={visit.goOnWith}
            onDiscard={visit.discard}
          />
          <div className="head-row">
            <h1>A paper sheet, typed in</h1>
            <Link href="/hand-out">Back to Hand out</Link>
          </div>
          <TextField
            label="Day on the sheet"
            step="on"
            type="date"
            value={draft.on}
            words={draft.on === '' ? '' : format.day(draft.on)}
            onChange={(on) => table.change({ kind: 'on', on })}
            problem={table.shown.on}
          />
          <LineCard draft={draft} table={table} />
          <KeyHints more="the day" saves="saves the sheet" />
        </div>
        <aside className="table-visit" aria-label="This sheet">
          <h2>This sheet</h2>
          <GatheredLines
            lines={draft.lines}
            nameOf={(line) => line.person.text}
            inWords={(line) => (
              <p>
                {line.text} · {line.amount}
              </p>
            )}
            whileEmpty={
              <p className="soft">
                {last === null
                  ? 'The lines of the sheet gather here. Enter after the amount lists one.'
                  : `Saved: a sheet of ${linesInWords(last)}. Undo on the foot line takes back all of it.`}
              </p>
            }
            onChangeLine={table.changeLine}
            onStep={table.change}
          />
          <p className="table-total" role="status">
            {listed.length === 0 ? '' : linesInWords(listed.length)}
          </p>
          <SaveTrouble refused={table.shown.refused} kept={visit.kept} />
          <ActionButton className="button table-button" off={table.saving} onClick={table.save}>
            Save the sheet
          </ActionButton>
        </aside>
      </div>
    </StepForm>
  )
}

interface LineCardProps {
  readonly draft: PaperDraft
  readonly table: ReturnType<typeof usePaper>
}

/** One line of the sheet: who, what, and how much. */
function LineCard({ draft, table }: LineCardProps) {
  const { line, listed, changing } = draft.lines
  const left = useLeftBySheet(draft)
  const at = listed.findIndex((each) => each.id === changing)
  return (
    <div className="table-card stack-3">
      <h2>{at < 0 ? `Line ${listed.length + 1}` : `Line ${at + 1}, being changed`}</h2>
      <PersonFields
        key={line.id}
        label="Who took it?"
        nobody="The name cannot be read"
        nobodyMeans="The packet goes out without a name."
        person={line.person}
        onChange={(change) => table.change({ kind: 'person', change })}
        problems={table.shown.line.person === undefined ? {} : { person: table.shown.line.person }}
        newHere={newOnSheet(listed)}
      />
      <SuggestField
        label="Lot"
        step="lot"
        size="table"
        text={line.text}
        chosen={line.lot !== null}
        onText={(text) => table.change({ kind: 'line', change: { text, lot: null } })}
        source={LOTS}
        onPick={(lot) => table.change({ kind: 'line', change: withLot(line, lot) })}
        nothingFound={(text) => `No lot to hand out fits ${text}.`}
        placeholder="scan, number, or a few letters"
        problem={table.shown.line.lot}
      />
      <AmountField
        label="Amount"
        step="amount"
        size="table"
        value={line.amount}
        onChange={(amount) => table.change({ kind: 'line', change: { amount } })}
        lotId={line.lot?.lotId}
        problem={table.shown.line.amount}
        placeholder="1 packet of 25, 30 seeds"
        after={left !== undefined && <LeftInLot left={left} />}
      />
      <p className="buttons">
        <button type="button" className="quiet-button table-button" onClick={table.listLine}>
          {changing === null ? 'List this line' : 'List it as changed'}
        </button>
      </p>
    </div>
  )
}

/** What the lot holds when the whole sheet is saved, or why it cannot be. */
function LeftInLot({ left }: { readonly left: NonNullable<ReturnType<typeof useLeftBySheet>> }) {
  if (left.left === null)
    return left.problem === null ? null : <p className="table-field-warning">{left.problem.sentence}</p>
  return (
    <p className="soft">
      With the whole sheet {left.lotNumber} is left with {left.left.words}{' '}
      <StateMark mark={left.stock.state} />
    </p>
  )
}

function linesInWords(lines: number): string {
  return lines === 1 ? '1 line' : `${lines} lines`
}

function sheetInWords({ lines }: PaperDraft): string {
  return `a paper sheet of ${linesInWords(lines.listed.length)}`
}
