import type { ReactNode } from 'react'

interface TickListProps {
  readonly className: string
  readonly legend: string
  readonly items: readonly { readonly id: number; readonly words: ReactNode }[]
  readonly ticked: readonly number[]
  readonly onChange: (ticked: readonly number[]) => void
  /** How many can be ticked at once. */
  readonly most?: number
}

/** Some things to tick, in the order in which they were ticked. */
export function TickList({ className, legend, items, ticked, onChange, most = items.length }: TickListProps) {
  return (
    <fieldset className={className}>
      <legend>{legend}</legend>
      {items.map(({ id, words }) => {
        const isTicked = ticked.includes(id)
        return (
          <label key={id} className="tick">
            <input
              type="checkbox"
              checked={isTicked}
              disabled={!isTicked && ticked.length >= most}
              onChange={() => onChange(isTicked ? ticked.filter((each) => each !== id) : [...ticked, id])}
            />
            {words}
          </label>
        )
      })}
    </fieldset>
  )
}
