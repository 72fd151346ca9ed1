import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { LOT_RELATIONS } from '../../../db/domain/shared/closed-sets.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'

/** The lots of a trace, line by line: what each is to the one that is followed, and how it came about. */
export function TraceTable({ lots, steps }: Pick<Value<'lot.trace'>, 'lots' | 'steps'>) {
  const { t } = useTexts()
  const numberOf = new Map(lots.map(({ lotId, lotNumber }) => [lotId, lotNumber]))
  const cameBy = (lotId: number) =>
    LOT_RELATIONS.flatMap((by) => {
      const from = steps.filter((step) => step.toLotId === lotId && step.by === by)
      const list = from.map(({ fromLotId }) => numberOf.get(fromLotId) ?? '')
      return from.length === 0 ? [] : [t('trace.from', { by, lots: { list } })]
    })
  return (
    <RowTable
      label={t('trace.table')}
      rowHeads
      rows={lots}
      keyOf={({ lotId }) => lotId}
      columns={[
        [t('shelf.lot'), ({ lotId, lotNumber }) => <Link href={lotAddress(lotId)}>{lotNumber}</Link>],
        [t('trace.what'), ({ kin }) => t(`trace.kin-${kin}`)],
        [
          t('trace.how'),
          ({ lotId }) =>
            cameBy(lotId).map((words) => (
              <span key={words} className="own-line">
                {words}
              </span>
            )),
        ],
        [t('shelf.fact-harvest'), ({ harvest }) => harvest],
        [t('shelf.holds'), ({ quantity }) => quantity.words],
        [t('trace.where'), (lot) => <WhereKept {...lot} />],
      ]}
    />
  )
}

interface WhereKeptProps {
  readonly quarantined: boolean
  readonly heldBy: string
}

/** Whether a lot is in quarantine, and with whom it lies where it lies elsewhere. */
export function WhereKept({ quarantined, heldBy }: WhereKeptProps) {
  const { t } = useTexts()
  return (
    <>
      {quarantined && <span className="own-line caution">{t('trace.quarantined')}</span>}
      {heldBy !== '' && <span className="own-line">{t('trace.elsewhere', { holder: heldBy })}</span>}
    </>
  )
}
