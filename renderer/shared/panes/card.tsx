import { type ComponentProps, useEffect } from 'react'
import { createTold } from '../client/told.ts'

/** The name of the card that stands open; null where none does. */
const { tell, useTold } = createTold<string | null>(null)
export const useCardName = useTold

interface CardProps extends Omit<ComponentProps<'article'>, 'aria-label'> {
  readonly name: string
}

/** The card of one thing. The window is named after it as long as it stands. */
export function Card({ name, ...rest }: CardProps) {
  useEffect(() => {
    tell(name)
    return () => tell(null)
  }, [name])
  return <article {...rest} aria-label={name} />
}
