import type { ReactNode } from 'react'
import type { NeedState } from '../../../db/domain/needs/need.ts'
import { useTexts } from '../format/use-texts.ts'
import './state-mark.css'

export type Mark = NeedState | 'quarantine' | 'test-due'

/** A state as an outline of its own with its word beside it: never by colour alone; with whose it is where it is not that of what is shown. */
export function StateMark({ mark, of }: { readonly mark: Mark; readonly of?: 'accession' }) {
  const { t } = useTexts()
  const state = t(`needs.state.${mark}`)
  return (
    <span className={`state-mark state-mark-${mark}`}>
      <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
        {OUTLINES[mark]}
      </svg>
      <span>{of === undefined ? state : t('needs.state-of-accession', { state })}</span>
    </span>
  )
}

const SEED =
  'M10 2.5 C14.5 6 16 10 14.5 13.5 C13.5 16 12 17.5 10 17.5 C8 17.5 6.5 16 5.5 13.5 C4 10 5.5 6 10 2.5 Z'

const OUTLINES: Record<Mark, ReactNode> = {
  'well-stocked': (
    <>
      <path d={SEED} className="state-mark-solid" />
      <path d={SEED} />
    </>
  ),
  watch: (
    <>
      <path
        d="M5.1 11 L14.9 11 C15 12 14.8 12.8 14.5 13.5 C13.5 16 12 17.5 10 17.5 C8 17.5 6.5 16 5.5 13.5 C5.2 12.8 5 12 5.1 11 Z"
        className="state-mark-solid"
      />
      <path d={SEED} />
    </>
  ),
  regrow: (
    <>
      <path d="M10 18 L10 8.5" />
      <path d="M10 10.5 C5.5 10.5 3.5 8 3 4 C7.5 4 10 6.5 10 10.5 Z" />
      <path d="M10 8.5 C10 5 12.5 2.5 17 2.5 C16.5 6.5 14 8.5 10 8.5 Z" />
      <path d="M5 18 L15 18" />
    </>
  ),
  rescue: (
    <>
      <path d="M8.6 2.8 C4 6 2.6 10 4 13.5 C5 16 6.4 17.4 8 17.4 L9.4 13.6 L7.2 10.6 L9.2 7.2 Z" />
      <path d="M11.4 2.8 C16 6 17.4 10 16 13.5 C15 16 13.6 17.4 12 17.4 L13.2 13.9 L10.9 10.8 L12.8 7.2 Z" />
    </>
  ),
  'none-left': <path d={SEED} strokeDasharray="2 2.5" />,
  'not-kept': <path d="M4 10 L16 10" />,
  quarantine: (
    <>
      <path d="M3 2.5 L3 17.5 M17 2.5 L17 17.5" />
      <path d="M10 5 C12.8 7.2 13.6 9.6 12.7 11.9 C12 13.6 11.2 14.6 10 14.6 C8.8 14.6 8 13.6 7.3 11.9 C6.4 9.6 7.2 7.2 10 5 Z" />
      <path d="M1.5 5 L4.5 5 M1.5 15 L4.5 15 M15.5 5 L18.5 5 M15.5 15 L18.5 15" />
    </>
  ),
  'test-due': (
    <>
      <path d="M2 12 L18 12 C17 16 14 17.5 10 17.5 C6 17.5 3 16 2 12 Z" />
      <path d="M7 12 L7 7.5 M7 7.5 L4.8 5.5 M7 7.5 L9.2 5.5 M13 12 L13 10" />
    </>
  ),
}
