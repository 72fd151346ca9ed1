import { harvestInWords, readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import { CAUTION_WORDS } from '../../shared/format/words.ts'
import { useAmountReading } from '../../shared/table-form/use-amount-reading.ts'
import type { VisitLines } from '../../shared/table-form/visit-lines.ts'
import type { GiftLine } from './gift-line.ts'

interface VisitListProps {
  readonly gifts: VisitLines<GiftLine>
  readonly thisYear: number
  readonly onChangeGift: (id: string) => void
  readonly onTakeOff: (id: string) => void
  readonly onPutBack: () => void
}

/** The gifts of this visit so far, each on its envelope. */
export function VisitList({ gifts, thisYear, onChangeGift, onTakeOff, onPutBack }: VisitListProps) {
  return (
    <>
      {gifts.listed.length === 0 && (
        <p className="soft">The gifts of this visit gather here. Enter after the last field lists one.</p>
      )}
      <ol className="envelopes">
        {gifts.listed.map((gift) => (
          <li key={gift.id} className="envelope" data-changing={gifts.changing === gift.id}>
            <GiftInWords gift={gift} thisYear={thisYear} />
            <p className="envelope-doing">
              {gifts.changing === gift.id ? (
                <span className="soft">being changed</span>
              ) : (
                <button type="button" className="word-button" onClick={() => onChangeGift(gift.id)}>
                  change<span className="only-aloud"> {gift.variety}</span>
                </button>
              )}
              <button type="button" className="word-button" onClick={() => onTakeOff(gift.id)}>
                take off<span className="only-aloud"> {gift.variety}</span>
              </button>
            </p>
          </li>
        ))}
      </ol>
      {gifts.takenOff && (
        <p className="taken-off">
          {gifts.takenOff.line.variety || 'A gift'} was taken off.{' '}
          <button type="button" className="word-button" onClick={onPutBack}>
            put it back
          </button>
        </p>
      )}
    </>
  )
}

function GiftInWords({ gift, thisYear }: { readonly gift: GiftLine; readonly thisYear: number }) {
  const { reading } = useAmountReading({
    text: gift.amount,
    sample: gift.sample,
    cropId: gift.cropId ?? undefined,
    lotId: undefined,
  })
  const harvest = readHarvestYear(gift.harvest, thisYear)
  return (
    <>
      <p className="envelope-name">{gift.variety}</p>
      <p>
        {gift.crop}
        {gift.varietyIs === 'new' ? ', new variety' : ''} ·{' '}
        {harvest.kind === 'harvest' ? harvestInWords(harvest.harvest) : gift.harvest}
      </p>
      <p>{reading?.words || gift.amount}</p>
      {gift.cautions.length > 0 && (
        <p className="envelope-caution">
          {gift.cautions.map((caution) => CAUTION_WORDS[caution]).join(', ')}: goes into quarantine
        </p>
      )}
    </>
  )
}
