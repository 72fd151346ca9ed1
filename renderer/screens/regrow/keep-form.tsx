import { useState } from 'react'
import type { NeedRecord } from '../../../db/contract/regeneration-operations.ts'
import type { PopulationGoal } from '../../../db/domain/needs/population-goal.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { numberWithin } from '../../shared/card-form/whole-number.ts'
import { GRADE_CHOICES } from './grade-words.ts'

const CHOICES = [{ value: '', label: 'as the whole library' }, ...GRADE_CHOICES] as const

/** The grade, regrowings, assurance and threshold of this accession alone. */
export function KeepPart({ need }: { readonly need: NeedRecord }) {
  const [open, setOpen] = useState(false)
  return (
    <section className="pane-part" aria-label="What it has to keep">
      {open ? (
        <KeepForm need={need} onClose={() => setOpen(false)} />
      ) : (
        <button type="button" className="quiet-button" onClick={() => setOpen(true)}>
          Change what it has to keep
        </button>
      )}
    </section>
  )
}

function KeepForm({ need, onClose }: { readonly need: NeedRecord; readonly onClose: () => void }) {
  const form = useCardForm({
    empty: {
      grade: (need.gradeIsOwn ? need.grade : '') as PopulationGoal | '',
      regrowings: String(need.regrowings),
      threshold: String(Math.round(1_000 * need.threshold) / 10),
      assurance: String(Math.round(1_000 * need.assurance) / 10),
    },
    writes: 'accession.change-policy',
    onClose,
  })
  const { grade, regrowings, threshold, assurance } = form.typed
  const held = numberWithin(regrowings, 1, 20)
  const wholeHeld = Number.isInteger(held) ? held : null
  const percent = numberWithin(threshold, 5, 100)
  const sure = numberWithin(assurance, 50, 99)
  const input =
    wholeHeld === null || percent === null || sure === null
      ? null
      : {
          accessionId: need.accessionId,
          grade: grade === '' ? null : grade,
          ...(wholeHeld === need.regrowings ? {} : { regrowingsKept: wholeHeld }),
          ...(percent === 100 * need.threshold ? {} : { viabilityThreshold: percent / 100 }),
          ...(sure === 100 * need.assurance ? {} : { assurance: sure / 100 }),
        }
  return (
    <CardForm title="What it has to keep" sendWord="Keep this for the accession" {...form.sending(input)}>
      {form.selectField('grade', 'Regrow it for', CHOICES)}
      {form.textField('regrowings', 'Regrowings held in reserve', {
        path: 'regrowingsKept',
        problem: wholeHeld === null ? 'Type a whole number from 1 to 20.' : undefined,
      })}
      {form.textField('assurance', 'Of 100 sowings, how many must make all their plants', {
        problem: sure === null ? 'Type a number from 50 to 99.' : undefined,
      })}
      {form.textField('threshold', 'Of 100 seeds tested, how many must sprout', {
        path: 'viabilityThreshold',
        problem: percent === null ? 'Type a number from 5 to 100.' : undefined,
      })}
    </CardForm>
  )
}
