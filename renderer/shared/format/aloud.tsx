import type { ReactNode } from 'react'

/** For `pieces`: a part of a message that is read aloud and not shown, as `<aloud>` in its text. */
export const ALOUD = {
  aloud: (children: ReactNode[]): ReactNode => (
    <span key="aloud" className="only-aloud">
      {children}
    </span>
  ),
}
