import { describe, expect, it } from 'vitest'
import { cautionTold } from '../../db/domain/cautions/caution-text.ts'
import { es } from '../../db/messages/es/index.ts'
import { createTexts } from '../../db/messages/texts.ts'
import { keptReason, reasonOf } from '../../db/services/book/quarantine-reason.ts'
import { saidInEnglish } from '../builders/in-english.ts'

const treated = cautionTold('treated', 'thiram')
const toxic = cautionTold('toxic', '')
const pests = cautionTold('pests-seen', '')

describe('why a lot is kept back', () => {
  it('is kept as what is to be told, each reason once and in order, and told in any language', () => {
    const kept = keptReason([treated, toxic, treated, pests])
    expect(saidInEnglish(reasonOf(kept))).toBe(
      'TREATED with thiram. Do not use for food, feed or oil. Also: POISONOUS IF EATEN. Keep from children and animals. ' +
        'Also: Pests were seen in this seed. Do not pass on until checked.',
    )
    const manner = { locale: 'en-GB', massUnits: 'metric' } as const
    const { say } = createTexts({ code: 'es', direction: 'ltr', manner, translation: es })
    const reason = reasonOf(kept)
    expect(typeof reason === 'string' ? reason : say(reason)).toMatch(
      /^TRATADA con thiram\..* Además: VENENOSA SI SE COME\..* Además: Se vieron plagas/,
    )
  })

  it('is nothing where there is no reason, and stays as somebody typed it', () => {
    expect(keptReason([])).toBeNull()
    expect(reasonOf(null)).toBe('')
    expect(reasonOf('Smells of damp')).toBe('Smells of damp')
  })
})
