import { cautionName } from '../../../db/domain/cautions/caution-text.ts'
import { harvestTold, readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { useAmountReading } from '../../shared/table-form/use-amount-reading.ts'
import { decisionTold } from './gift-decision-fields.tsx'
import type { GiftLine } from './gift-line.ts'

/** A listed gift on its envelope: crop, harvest, amount, and what keeps it in quarantine. */
export function GiftInWords({ gift, thisYear }: { readonly gift: GiftLine; readonly thisYear: number }) {
  const { t, say } = useTexts()
  const { reading } = useAmountReading({
    text: gift.amount,
    sample: gift.sample,
    cropId: gift.cropId ?? undefined,
  })
  const harvest = readHarvestYear(gift.harvest, thisYear)
  const told = harvest.kind === 'harvest' ? harvestTold(harvest.harvest) : gift.harvest
  const year = typeof told === 'string' ? told : say(told)
  const { crop } = gift
  const cautions = gift.cautions.map((caution) => say(cautionName(caution)))
  return (
    <>
      <p>
        {gift.newCrop
          ? t('take-in.each-crop', { crop, year })
          : gift.varietyIs === 'new'
            ? t('take-in.each-variety', { crop, year })
            : `${crop} · ${year}`}
      </p>
      <p>{reading?.words || gift.amount}</p>
      {gift.cautions.length > 0 && (
        <p className="caution strong">
          {gift.decision === 'take-in'
            ? t('take-in.quarantine', { cautions: { list: cautions } })
            : cautions.join(', ')}
        </p>
      )}
      {gift.decision !== 'take-in' && <p className="strong">{say(decisionTold(gift))}</p>}
    </>
  )
}
