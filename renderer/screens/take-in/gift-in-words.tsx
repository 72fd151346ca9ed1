import { CAUTION_WORDS } from '../../../db/domain/cautions/caution-text.ts'
import { harvestInWords, readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import { useAmountReading } from '../../shared/table-form/use-amount-reading.ts'
import { decisionInWords } from './gift-decision-fields.tsx'
import type { GiftLine } from './gift-line.ts'

/** A listed gift on its envelope: crop, harvest, amount, and what keeps it in quarantine. */
export function GiftInWords({ gift, thisYear }: { readonly gift: GiftLine; readonly thisYear: number }) {
  const { reading } = useAmountReading({
    text: gift.amount,
    sample: gift.sample,
    cropId: gift.cropId ?? undefined,
  })
  const harvest = readHarvestYear(gift.harvest, thisYear)
  const year = harvest.kind === 'harvest' ? harvestInWords(harvest.harvest) : gift.harvest
  return (
    <>
      <p>
        {gift.crop}
        {gift.newCrop ? ', new crop' : gift.varietyIs === 'new' ? ', new variety' : ''} · {year}
      </p>
      <p>{reading?.words || gift.amount}</p>
      {gift.cautions.length > 0 && (
        <p className="caution strong">
          {gift.cautions.map((caution) => CAUTION_WORDS[caution]).join(', ')}
          {gift.decision === 'take-in' && ': goes into quarantine'}
        </p>
      )}
      {gift.decision !== 'take-in' && <p className="strong">{decisionInWords(gift)}</p>}
    </>
  )
}
