import type { ReactNode } from 'react'
import './fact-list.css'

interface Fact {
  readonly name: string
  readonly value: ReactNode
}

/** Facts in two columns as on an index card. A fact without a value is left out. */
export function FactList({ facts }: { readonly facts: readonly Fact[] }) {
  return (
    <dl className="fact-list">
      {facts
        .filter((fact) => fact.value !== '' && fact.value !== null)
        .map((fact) => (
          <div key={fact.name} className="fact">
            <dt>{fact.name}</dt>
            <dd>{fact.value}</dd>
          </div>
        ))}
    </dl>
  )
}
