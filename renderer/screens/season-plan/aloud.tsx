import type { ReactNode } from 'react'

/** Of a message in pieces: `<aloud>` is only heard, `<strong>` stands out. */
export const ALOUD = {
  aloud: (words: ReactNode) => (
    <span key="aloud" className="only-aloud">
      {words}
    </span>
  ),
  strong: (words: ReactNode) => <strong key="strong">{words}</strong>,
}
