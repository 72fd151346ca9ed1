import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'

/** How far a gift has come: a stop is behind it, where it is now, or still ahead. */
type Reached = 'behind' | 'here' | 'ahead'

interface StopProps {
  readonly name: string
  readonly reached: Reached
  readonly outline: ReactNode
  readonly children: ReactNode
}

/** The way of a gift, from the table to its number: always in view, in words and outlines. */
export function GiftWay({ gift }: { readonly gift: WaitingGift }) {
  const format = useFormat()
  const { t } = useTexts()
  const isOffered = gift.state === 'offered'
  return (
    <ol className="gift-way" aria-label={t('gifts.way')}>
      <Stop name={t('gifts.way.offered')} reached="behind" outline={ENVELOPE}>
        {format.day(gift.offeredOn)}
      </Stop>
      <Stop name={t('gifts.way.waiting')} reached={isOffered ? 'here' : 'behind'} outline={DISH}>
        {t('gifts.way.open', { open: isOffered ? gift.waitsFor.length : 0, done: gift.done.length })}
      </Stop>
      {gift.state === 'declined' ? (
        <Stop name={t('gifts.way.declined')} reached="here" outline={GOES_BACK}>
          {gift.reason}
        </Stop>
      ) : (
        <Stop
          name={t('gifts.way.accepted')}
          reached={gift.state === 'accepted' ? 'here' : 'ahead'}
          outline={CARD}
        >
          {gift.lotId === null ? (
            t('gifts.way.gets-number')
          ) : (
            <Link href={lotAddress(gift.lotId)}>{gift.accessionNumber}</Link>
          )}
        </Stop>
      )}
    </ol>
  )
}

function Stop({ name, reached, outline, children }: StopProps) {
  return (
    <li
      className="gift-stop"
      data-reached={reached}
      {...(reached === 'here' ? { 'aria-current': 'step' as const } : {})}
    >
      <svg className="points" viewBox="0 0 32 32" width="32" height="32" aria-hidden="true">
        {outline}
      </svg>
      <span className="gift-stop-name">{name}</span>
      <span>{children}</span>
    </li>
  )
}

const ENVELOPE = (
  <>
    <path d="M4 9 L28 9 L28 25 L4 25 Z" />
    <path d="M4 9 L16 17 L28 9" />
  </>
)

/** Seeds on a dish: they lie and wait. */
const DISH = (
  <>
    <path d="M3 19 C6 26 26 26 29 19 Z" />
    <path d="M11 17 C9 14 10 11 12 9 C14 11 15 14 13 17 Z M20 17 C18 14 19 11 21 9 C23 11 24 14 22 17 Z" />
  </>
)

/** A card with its guide tab: the record that the gift becomes. */
const CARD = (
  <>
    <path d="M4 11 L7 11 L9 6 L18 6 L20 11 L28 11 L28 26 L4 26 Z" />
    <path d="M8 16 L24 16 M8 21 L19 21" />
  </>
)

const GOES_BACK = (
  <>
    <path d="M12 11 L29 11 L29 25 L12 25 Z" />
    <path d="M10 18 L2 18 M6 13.5 L2 18 L6 22.5" />
  </>
)
