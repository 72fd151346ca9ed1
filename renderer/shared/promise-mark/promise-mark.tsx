import type { ReactNode } from 'react'
import type { PromiseState } from '../../../db/domain/promises/promise.ts'
import { useTexts } from '../format/use-texts.ts'
import '../state-mark/state-mark.css'
import './promise-mark.css'

const LOOP = 'M3 13 C3 6 17 6 17 13'

/** A promise as an arc from hand to hand: whole when seed came back, open while it is waited for. */
const OUTLINES: Record<PromiseState, ReactNode> = {
  overdue: (
    <>
      <path d={LOOP} strokeDasharray="2.5 2.5" />
      <path d="M10 2 V6 M10 15 V18" />
    </>
  ),
  open: <path d={LOOP} strokeDasharray="2.5 2.5" />,
  met: (
    <>
      <path d={LOOP} />
      <path d="M3 13 l-1.5 -3 M3 13 l3 -1.2" />
    </>
  ),
  waived: (
    <>
      <path d="M3 13 C3 8.5 6 7.5 8 7.6" />
      <path d="M12.5 8 C15 8.4 17 10 17 13" />
    </>
  ),
}

/** How a promise to bring seed back stands, as an outline with its word. */
export function PromiseMark({ state }: { readonly state: PromiseState }) {
  const { t } = useTexts()
  return (
    <span className={`state-mark promise-mark-${state}`}>
      <svg className="points" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
        {OUTLINES[state]}
      </svg>
      <span>{t(`promise.state.${state}`)}</span>
    </span>
  )
}
