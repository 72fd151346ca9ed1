import { useState } from 'react'
import type { NeedRecord } from '../../../db/contract/regeneration-operations.ts'
import type { PopulationGoal } from '../../../db/domain/needs/population-goal.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { numberWithin } from '../../shared/card-form/whole-number.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { goalChoices } from './goal-choices.ts'

/** The grade, regrowings, assurance and threshold of this accession alone. */
export function KeepPart({ need }: { readonly need: NeedRecord }) {
  const { t } = useTexts()
  const [open, setOpen] = useState(false)
  return (
    <section className="pane-part" aria-label={t('needs.keep-part')}>
      {open ? (
        <KeepForm need={need} onClose={() => setOpen(false)} />
      ) : (
        <button type="button" className="quiet-button" onClick={() => setOpen(true)}>
          {t('needs.change-keep')}
        </button>
      )}
    </section>
  )
}

function KeepForm({ need, onClose }: { readonly need: NeedRecord; readonly onClose: () => void }) {
  const { t } = useTexts()
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
    <CardForm title={t('needs.keep-part')} sendWord={t('needs.save-keep')} {...form.sending(input)}>
      {form.selectField('grade', t('needs.regrow-it-for'), [
        { value: '', label: t('needs.as-library') },
        ...goalChoices(t),
      ])}
      {form.textField('regrowings', t('needs.regrowings-held'), {
        path: 'regrowingsKept',
        problem: wholeHeld === null ? t('needs.type-whole-within', { least: 1, most: 20 }) : undefined,
      })}
      {form.textField('assurance', t('needs.assurance-asked'), {
        problem: sure === null ? t('needs.type-within', { least: 50, most: 99 }) : undefined,
      })}
      {form.textField('threshold', t('needs.threshold-asked'), {
        path: 'viabilityThreshold',
        problem: percent === null ? t('needs.type-within', { least: 5, most: 100 }) : undefined,
      })}
    </CardForm>
  )
}
