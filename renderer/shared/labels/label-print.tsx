import { useState } from 'react'
import type { CallInput, Value } from '../../../db/contract/contract.ts'
import type { LabelSheet } from '../../../db/contract/paper-operations.ts'
import { CardForm, problemAt } from '../card-form/card-form.tsx'
import { call } from '../client/call.ts'
import { ProblemError } from '../client/problem-error.ts'
import { useRead } from '../client/use-read.ts'
import { SelectField, TextField } from '../table-form/fields.tsx'
import { CameOutWell } from './came-out-well.tsx'
import { PaperPages } from './paper-pages.tsx'
import { SheetPicture } from './sheet-picture.tsx'
import { StorageCards } from './storage-cards.tsx'

interface LabelPrintProps {
  readonly title: string
  readonly lotIds: readonly number[]
  /** What a packet is to say it holds; empty says what the lot holds. */
  readonly contents: string
  readonly onClose?: () => void
}

const KEPT_AS = 'label-sheet'

/** Labels for some lots: on which sheet, from which label on, how many of each; then the pages to look at and print. */
export function LabelPrint({ title, lotIds, contents, onClose }: LabelPrintProps) {
  const sheets = useRead('label-sheet.list', {}).data?.sheets ?? []
  const paper = useRead('collection.get', {}).data?.settings.paper ?? 'a4'
  const [picked, setPicked] = useState(() => localStorage.getItem(KEPT_AS))
  const sheet =
    sheets.find((each) => each.sheet === picked) ?? sheets.find((each) => each.sheet.startsWith(paper))
  const [startAt, setStartAt] = useState(1)
  const [copies, setCopies] = useState('1')
  const [says, setSays] = useState(contents)
  const making = useMaking()
  const pick = (next: LabelSheet) => {
    localStorage.setItem(KEPT_AS, next)
    setPicked(next)
    setStartAt(1)
  }
  const make = () => {
    if (sheet === undefined) return
    const each = lotIds.map((lotId) => ({ lotId, copies: Number(copies) || 1, contents: says }))
    void making.make({ labels: each, sheet: sheet.sheet, startAt })
  }
  if (sheet === undefined) return null
  return (
    <>
      <CardForm
        title={title}
        sendWord="Make the labels"
        busy={making.busy}
        error={making.error}
        shownAtField={['labels.0.copies', 'labels.0.contents']}
        onSend={make}
        {...(onClose === undefined ? {} : { onClose })}
      >
        <SelectField
          label="Label sheet"
          size="record"
          value={sheet.sheet}
          options={sheets.map((each) => ({ value: each.sheet, label: each.name }))}
          onChange={pick}
        />
        <TextField
          label={lotIds.length === 1 ? 'How many' : 'How many of each'}
          step="copies"
          size="record"
          value={copies}
          onChange={setCopies}
          problem={problemAt(making.error, 'labels.0.copies')}
        />
        <TextField
          label="The packet says"
          step="contents"
          size="record"
          value={says}
          onChange={setSays}
          hint="left empty: what the lot holds"
          problem={problemAt(making.error, 'labels.0.contents')}
        />
        <SheetPicture
          columns={sheet.columns}
          rows={sheet.rows}
          startAt={startAt}
          labels={lotIds.length * (Number(copies) || 1)}
          onStartAt={setStartAt}
        />
      </CardForm>
      {making.made !== null && (
        <PaperPages name="The labels" made={making.made} takesFocus>
          <CameOutWell lotIds={lotIds} sheet={making.made.sheet} startAt={making.made.startAt} />
        </PaperPages>
      )}
      <StorageCards of={{ lotIds: [...lotIds] }} />
    </>
  )
}

interface Making {
  readonly busy: boolean
  readonly error: ProblemError | null
  /** The pages, and where the labels lie that are on them. */
  readonly made: (Value<'label.print'> & Pick<LabelsAsked, 'sheet' | 'startAt'>) | null
  readonly make: (input: LabelsAsked) => Promise<void>
}

type LabelsAsked = CallInput<'label.print'> & { readonly sheet: LabelSheet; readonly startAt: number }

function useMaking(): Making {
  const [state, setState] = useState<Omit<Making, 'make'>>({ busy: false, error: null, made: null })
  const make: Making['make'] = async (input) => {
    setState((was) => ({ ...was, busy: true, error: null }))
    try {
      const made = await call('label.print', input)
      setState({ busy: false, error: null, made: { ...made, sheet: input.sheet, startAt: input.startAt } })
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      setState((was) => ({ ...was, busy: false, error: thrown }))
    }
  }
  return { ...state, make }
}
