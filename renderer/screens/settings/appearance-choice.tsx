import { useState } from 'react'
import type { Settings } from '../../../db/contract/collection-operations.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

const CHOICES: readonly (readonly [Settings['appearance'], string])[] = [
  ['system', 'as this computer has it'],
  ['light', 'light, as paper'],
  ['dark', 'dark, as the evening'],
]

/** Light or dark; chosen at once. */
export function AppearanceChoice({ appearance }: { readonly appearance: Settings['appearance'] }) {
  const write = useWrite('settings.change')
  const [chosen, setChosen] = useState(appearance)
  const choose = (next: Settings['appearance']) => {
    setChosen(next)
    write.mutate({ settings: { appearance: next } }, { onError: () => setChosen(appearance) })
  }
  return (
    <section className="page-part stack-2">
      <fieldset className="settings-appearance">
        <legend>Light or dark</legend>
        {CHOICES.map(([value, word]) => (
          <label key={value} className="tick">
            <input type="radio" name="appearance" checked={chosen === value} onChange={() => choose(value)} />
            {word}
          </label>
        ))}
        {write.error !== null && <ProblemText problem={write.error.problem} />}
      </fieldset>
    </section>
  )
}
