import { Link } from 'wouter'
import { recallAddress } from '../addresses.ts'
import { useRead } from '../client/use-read.ts'
import { useFormat } from '../format/use-format.ts'
import { useTexts } from '../format/use-texts.ts'

interface RecallLinksProps {
  /** Only those that took this lot in. */
  readonly lotId?: number
  /** In their place where there are none. */
  readonly none?: string
}

/** Recalls, latest first, each with its day, its reason and its lots. */
export function RecallLinks({ lotId, none = '' }: RecallLinksProps) {
  const { t } = useTexts()
  const format = useFormat()
  const recalls = useRead('recall.list', lotId === undefined ? {} : { lotId }).data?.recalls
  if (recalls === undefined) return null
  if (recalls.length === 0) return none === '' ? null : <p>{none}</p>
  return (
    <ul className="ruled">
      {recalls.map(({ recallId, on, reason, variety, lotNumber, lots }) => (
        <li key={recallId}>
          <Link href={recallAddress(recallId)}>{t('recall.of', { lot: lotNumber })}</Link>{' '}
          <span className="soft">{format.day(on)}</span> <span className="own-line">{reason}</span>
          <span className="own-line soft">
            {t('recall.line-lots', { variety, lot: lotNumber, others: lots - 1 })}
          </span>
        </li>
      ))}
    </ul>
  )
}
