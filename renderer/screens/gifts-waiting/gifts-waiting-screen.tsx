import { type ReactNode, type RefObject, useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { focusIsFree } from '../../shared/focus/lost-focus.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaneRows } from '../../shared/panes/pane-rows.tsx'
import { useListAndCard } from '../../shared/panes/use-list-and-card.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SelectField } from '../../shared/table-form/fields.tsx'
import { type Asking, DonorAnswer, DonorQuestion } from './donor-question.tsx'
import { giftAddress } from './gift-address.ts'
import { GiftCard } from './gift-card.tsx'
import { donorOf, type Shown, standingOf } from './gift-words.ts'
import './gifts-waiting.css'
import { QuarantinedLots } from './quarantined-lots.tsx'
import { ReturnsToCheck } from './returns-to-check.tsx'

const SHOWN: readonly Shown[] = ['offered', 'accepted', 'declined', 'all']

const NOBODY_ASKS: Asking = { text: '', personId: null }

/** Gifts that wait: a list on the left, and on the right the card of the one that is chosen. */
export function GiftsWaitingScreen({ giftId }: { readonly giftId?: number }) {
  const texts = useTexts()
  const { t } = texts
  const [shown, setShown] = useState<Shown>('offered')
  const [asking, setAsking] = useState(NOBODY_ASKS)
  const list = useRead('gift.list', {})
  const returns = useRead('return.list-to-check', {}).data?.returns ?? []
  const left = useRef<HTMLElement>(null)
  const all = list.data?.gifts
  const gifts = all?.filter(isListed(shown, asking.personId)) ?? []
  const chosen = all?.find((gift) => gift.giftId === giftId)
  const first = gifts[0]
  const { card, openCard } = useListAndCard(giftId !== undefined, first && giftAddress(first.giftId))
  useArrival(left, all !== undefined && (first === undefined || giftId !== undefined))
  if (list.error !== null) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined) return <p className="soft waiting">{t('gifts.opening')}</p>
  return (
    <div className="panes">
      <section className="panes-list" aria-label={t('gifts.list')} ref={left}>
        <div className="head-row">
          <h1>{t('gifts.title')}</h1>
          <Link href="/take-in">{t('gifts.back')}</Link>
        </div>
        <div className="gifts-ask">
          <DonorQuestion asking={asking} onChange={setAsking} />
          {asking.personId === null ? (
            <SelectField
              label={t('gifts.show')}
              value={shown}
              options={SHOWN.map((value) => ({ value, label: t(`gifts.shown.${value}`) }))}
              onChange={setShown}
            />
          ) : (
            <button type="button" className="word-button" onClick={() => setAsking(NOBODY_ASKS)}>
              {t('gifts.ask-back')}
            </button>
          )}
        </div>
        {gifts.length === 0 && asking.personId === null && <NoGifts shown={shown} />}
        <PaneRows
          label={t('gifts.gifts')}
          rows={gifts.map((gift) => giftRow(gift, texts))}
          onOpen={openCard}
        />
        {asking.personId === null ? (
          <>
            <ReturnsToCheck returns={returns} />
            <QuarantinedLots
              lots={list.data.quarantined.filter(
                ({ lotId }) => !returns.some((back) => back.lotId === lotId),
              )}
            />
          </>
        ) : (
          <DonorAnswer name={asking.text} personId={asking.personId} gifts={gifts} />
        )}
      </section>
      <section className="panes-card" aria-label={t('gifts.gift')} ref={card}>
        {chosen !== undefined && <GiftCard key={chosen.giftId} gift={chosen} />}
        {chosen === undefined && giftId !== undefined && <p>{t('gifts.no-gift')}</p>}
      </section>
    </div>
  )
}

function isListed(shown: Shown, donorId: number | null) {
  return (gift: WaitingGift) =>
    donorId === null ? shown === 'all' || gift.state === shown : gift.donorId === donorId
}

function NoGifts({ shown }: { readonly shown: Shown }) {
  const { t, pieces } = useTexts()
  if (shown !== 'offered') return <p className="soft">{t('gifts.none-listed')}</p>
  return (
    <p>
      {pieces<ReactNode>(message('gifts.none-waits'), {
        link: (words) => (
          <Link key="take-in" href="/take-in">
            {words}
          </Link>
        ),
      })}
    </p>
  )
}

function giftRow(gift: WaitingGift, { text: t, say }: Texts) {
  return {
    address: giftAddress(gift.giftId),
    content: (
      <>
        <span className="strong">{gift.variety}</span>
        <span className="soft">{t('gifts.crop-from', { crop: gift.crop, donor: donorOf(gift) })}</span>
        <span>
          {gift.waitsFor.some(({ late }) => late) && <strong className="late-mark">{t('gifts.late')}</strong>}
          {say(standingOf(gift))}
        </span>
      </>
    ),
  }
}

/** On arrival the focus goes to the chosen gift in the list, unless the keeper is somewhere already. */
function useArrival(left: RefObject<HTMLElement | null>, ready: boolean) {
  useEffect(() => {
    if (!ready) return
    if (focusIsFree() || document.activeElement?.matches('main, h1') === true)
      left.current?.querySelector<HTMLElement>('[aria-current]')?.focus()
  }, [left, ready])
}
