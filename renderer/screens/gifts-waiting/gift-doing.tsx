import type { FC } from 'react'
import type { WaitingGift } from '../../../db/contract/waiting-operations.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { isBegun } from '../../shared/card-form/use-saved-form.ts'
import { AcceptForm } from './accept-form.tsx'
import { DeclineForm } from './decline-form.tsx'
import type { GiftFormProps } from './gift-form-props.ts'
import { WaitForm } from './wait-form.tsx'

const DOINGS: readonly { readonly name: string; readonly word: string; readonly form: FC<GiftFormProps> }[] =
  [
    { name: 'accept', word: 'Take it in', form: AcceptForm },
    { name: 'wait', word: 'Let it wait', form: WaitForm },
    { name: 'decline', word: 'Decline', form: DeclineForm },
  ]

/** What can be done with a gift that was offered; each opens its form right here. */
export function GiftDoing({ gift }: { readonly gift: WaitingGift }) {
  const { open, button, close } = useOpenForm<string>()
  const draftName = (name: string) => `gift/${gift.giftId}/${name}`
  const OpenForm = DOINGS.find(({ name }) => name === open)?.form
  return (
    <section className="pane-part" aria-label="What to do with it">
      <div className="buttons">
        {DOINGS.map(({ name, word }) => (
          <button
            key={name}
            type="button"
            className={name === 'accept' && gift.waitsFor.length === 0 ? 'button' : 'quiet-button'}
            {...(name === 'accept' ? { 'data-next': '' } : {})}
            {...button(name)}
          >
            {word}
            {open !== name && isBegun(draftName(name)) && <span> (begun)</span>}
          </button>
        ))}
      </div>
      {OpenForm !== undefined && open !== null && (
        <OpenForm key={open} gift={gift} draftName={draftName(open)} onClose={() => close(open)} />
      )}
    </section>
  )
}
