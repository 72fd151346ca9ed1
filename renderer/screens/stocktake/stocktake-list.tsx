import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { type CountedLot, type ListedLot, saysNothing } from './stocktake-draft.ts'
import type { Previewed } from './use-stocktake.ts'

interface StocktakeListProps {
  readonly rows: readonly ListedLot[]
  readonly counted: readonly CountedLot[]
  readonly previewed: ReadonlyMap<number, Previewed>
  readonly at: number | undefined
  /** The place that is being gone through, to mark a lot that the book has elsewhere. */
  readonly place: string
  readonly onTake: (lotId: number) => void
}

/** Every lot of the place, with what was found and by how much it differs. */
export function StocktakeList(props: StocktakeListProps) {
  const { rows, counted, previewed, at, place, onTake } = props
  const { t } = useTexts()
  return (
    <div className="table-gathered stack-3">
      <ol className="ruled">
        {rows.map((lot) => {
          const typed = counted.find(({ lotId }) => lotId === lot.lotId)?.found ?? ''
          return (
            <li key={lot.lotId} className="stocktake-row" data-counted={typed !== ''}>
              <button
                type="button"
                className="stocktake-lot choice"
                {...(lot.lotId === at ? { 'aria-current': 'true' as const } : {})}
                onClick={() => onTake(lot.lotId)}
              >
                <strong>{lot.lotNumber}</strong> {lot.variety}
              </button>
              <span className="stocktake-found head-row">
                {typed === ''
                  ? t('stocktake.not-looked-at')
                  : saysNothing(typed)
                    ? t('stocktake.nothing-left')
                    : typed}
                <Difference previewed={typed === '' ? undefined : previewed.get(lot.lotId)} />
              </span>
              {lot.place !== place && (
                <span className="soft stocktake-elsewhere">
                  {lot.place === ''
                    ? t('stocktake.no-place')
                    : t('stocktake.elsewhere', { place: lot.place })}
                </span>
              )}
            </li>
          )
        })}
      </ol>
    </div>
  )
}

/** By how much the book differs from what was found, in both numbers; by sign and word, not by colour. */
export function Difference({ previewed }: { readonly previewed: Previewed | undefined }) {
  const format = useFormat()
  const { t } = useTexts()
  if (previewed?.change == null) return null
  const { count, massMg } = previewed.change
  if (count === 0 && massMg === 0) return <span className="stocktake-difference">{t('stocktake.same')}</span>
  const sign = massMg > 0 ? '+' : massMg < 0 ? '−' : ''
  return (
    <span className="stocktake-difference" data-differs="true">
      {t('stocktake.differs', {
        count,
        change: format.change(count),
        mass: `${sign}${format.mass(Math.abs(massMg))}`,
      })}
    </span>
  )
}
