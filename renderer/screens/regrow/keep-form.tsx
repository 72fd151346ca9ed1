import { useState } from 'react'
import type { NeedRecord } from '../../../db/contract/regrow-operations.ts'
import { readNumber } from '../../../db/domain/amounts/read-number.ts'
import { GRADES, type PopulationGoal } from '../../../db/domain/needs/population-goal.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useWrite } from '../../shared/client/use-write.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import { GRADE_CHOICES } from './grade-words.ts'

const AS_LIBRARY = { value: '', label: 'as the whole library' } as const

/** The grade, regrowings, assurance and threshold of this accession alone. */
export function KeepForm({ need }: { readonly need: NeedRecord }) {
  const [open, setOpen] = useState(false)
  const [grade, setGrade] = useState<PopulationGoal | ''>(need.gradeIsOwn ? need.grade : '')
  const [regrowings, setRegrowings] = useState(String(need.regrowings))
  const [threshold, setThreshold] = useState(String(Math.round(1_000 * need.threshold) / 10))
  const [assurance, setAssurance] = useState(String(Math.round(1_000 * need.assurance) / 10))
  const write = useWrite('accession.change-policy')
  const held = within(regrowings, 1, 20)
  const percent = within(threshold, 5, 100)
  const sure = within(assurance, 50, 99)
  const wholeHeld = held !== null && Number.isInteger(held) ? held : null
  if (!open) {
    return (
      <section className="pane-part" aria-label="What it has to keep">
        <button type="button" className="quiet-button" onClick={() => setOpen(true)}>
          Change what it has to keep
        </button>
      </section>
    )
  }
  const send = () => {
    if (wholeHeld === null || percent === null || sure === null) return
    write.mutate(
      {
        accessionId: need.accessionId,
        grade: grade === '' ? null : grade,
        ...(wholeHeld === need.regrowings ? {} : { regrowingsKept: wholeHeld }),
        ...(percent === 100 * need.threshold ? {} : { viabilityThreshold: percent / 100 }),
        ...(sure === 100 * need.assurance ? {} : { assurance: sure / 100 }),
      },
      { onSuccess: () => setOpen(false) },
    )
  }
  return (
    <section className="pane-part" aria-label="What it has to keep">
      <CardForm
        title="What it has to keep"
        sendWord="Keep this for the accession"
        busy={write.isPending || wholeHeld === null || percent === null || sure === null}
        error={write.error}
        shownAtField={['regrowingsKept', 'assurance', 'viabilityThreshold']}
        onSend={send}
        onClose={() => setOpen(false)}
      >
        <SelectField<PopulationGoal | ''>
          label="Regrow it for"
          step="grade"
          size="record"
          value={grade}
          options={[AS_LIBRARY, ...GRADE_CHOICES.filter(({ value }) => GRADES.includes(value))]}
          onChange={setGrade}
        />
        <TextField
          label="Regrowings held in reserve"
          step="regrowings"
          size="record"
          value={regrowings}
          onChange={setRegrowings}
          problem={
            wholeHeld === null
              ? 'Type a whole number from 1 to 20.'
              : problemAt(write.error, 'regrowingsKept')
          }
        />
        <TextField
          label="Of 100 sowings, how many must make all their plants"
          step="assurance"
          size="record"
          value={assurance}
          onChange={setAssurance}
          problem={sure === null ? 'Type a number from 50 to 99.' : problemAt(write.error, 'assurance')}
        />
        <TextField
          label="Of 100 seeds tested, how many must sprout"
          step="threshold"
          size="record"
          value={threshold}
          onChange={setThreshold}
          problem={
            percent === null ? 'Type a number from 5 to 100.' : problemAt(write.error, 'viabilityThreshold')
          }
        />
      </CardForm>
    </section>
  )
}

function within(typed: string, least: number, most: number): number | null {
  const read = readNumber(typed.replace('%', ''))
  return read.kind === 'number' && read.value >= least && read.value <= most ? read.value : null
}
