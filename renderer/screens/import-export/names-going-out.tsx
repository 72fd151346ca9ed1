import type { Value } from '../../../db/contract/contract.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { CheckField } from '../../shared/table-form/check-field.tsx'

interface NamesGoingOutProps {
  readonly found: Value<'person.list-names-in-texts'>
  /** Looks again after something was decided. */
  readonly onDecided: () => void
}

/** First names and surnames that stand by themselves in texts, each with where and whether it is left out. */
export function NamesGoingOut({ found, onDecided }: NamesGoingOutProps) {
  const format = useFormat()
  const write = useWrite('settings.change')
  const decide = (name: string, masked: boolean) => {
    const others = found.names.filter((one) => one.masked && one.name !== name).map((one) => one.name)
    const maskedNames = masked ? [...others, name] : others
    write.mutate({ settings: { maskedNames } }, { onSuccess: onDecided })
  }
  return (
    <>
      {write.error !== null && <ProblemText problem={write.error.problem} />}
      <ul className="stack-2" aria-label="Names in texts">
        {found.names.map(({ name, masked, total, places }) => (
          <li key={name}>
            <CheckField
              label={`say somebody for ${capital(name)}`}
              checked={masked}
              onChange={(on) => decide(name, on)}
            />
            <details>
              <summary>
                in {format.many(total, 'text')}
                <span className="only-aloud">: {capital(name)}</span>
              </summary>
              {places.map(({ where, text }) => (
                <p key={`${where} ${text}`}>
                  {capital(where)}: <q>{text}</q>
                </p>
              ))}
              {total > places.length && <p>and {format.number(total - places.length)} more.</p>}
            </details>
          </li>
        ))}
      </ul>
    </>
  )
}
