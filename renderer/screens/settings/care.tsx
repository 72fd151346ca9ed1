import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { message } from '../../../db/messages/message.ts'
import { call } from '../../shared/client/call.ts'
import { say } from '../../shared/foot-line/said.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The care of the book: whether it is right, and a copy of it. */
export function Care({ about }: { readonly about: Value<'collection.get'> }) {
  const { t, pieces } = useTexts()
  const queries = useQueryClient()
  const check = useMutation({ mutationFn: () => call('collection.check', {}) })
  const backUp = useMutation({
    mutationFn: () => call('backup.create', {}),
    onMutate: () => lookAgain(),
    onSuccess: ({ file }) => {
      say({ said: t('settings.backed-up-to', { file }) })
      lookAgain()
    },
  })
  const lookAgain = () => void queries.invalidateQueries({ queryKey: ['backup.list'] })
  return (
    <section className="page-part stack-2">
      <h2>{t('settings.book')}</h2>
      <p>
        {t('settings.book-holds', {
          accessions: about.accessions,
          lots: about.lots,
          people: about.people,
          lines: about.movements,
        })}
      </p>
      <p className="soft">{t('settings.kept-in', { file: about.file })}</p>
      <p>
        {pieces(message('settings.to-written'), {
          link: (words) => (
            <Link key="link" href="/written">
              {words}
            </Link>
          ),
        })}
      </p>
      <p>
        {pieces(message('settings.to-in-and-out'), {
          link: (words) => (
            <Link key="link" href="/in-and-out">
              {words}
            </Link>
          ),
        })}
      </p>
      <p className="buttons">
        <ActionButton className="quiet-button" off={check.isPending} onClick={() => check.mutate()}>
          {t(check.isPending ? 'settings.checking' : 'settings.check')}
        </ActionButton>
        <ActionButton className="quiet-button" off={backUp.isPending} onClick={() => backUp.mutate()}>
          {t(backUp.isPending ? 'settings.copying' : 'settings.back-up')}
        </ActionButton>
      </p>
      {check.error !== null && <ProblemText problem={check.error.problem} />}
      {backUp.error !== null && <ProblemText problem={backUp.error.problem} />}
      <div role="status">
        {check.data !== undefined && <Findings found={check.data} />}
        {backUp.data !== undefined && (
          <p>
            {t('settings.copy-whole', { file: backUp.data.file, bytes: backUp.data.bytes })}{' '}
            {backUp.data.second !== null && t('settings.second-copy', { file: backUp.data.second })}
            {backUp.data.secondTrouble}
          </p>
        )}
      </div>
    </section>
  )
}

function Findings({ found }: { readonly found: Value<'collection.check'> }) {
  const { t } = useTexts()
  const { lots, movements } = found.checked
  if (found.clean) {
    return <p>{t('settings.book-right', { lots, lines: movements })}</p>
  }
  return (
    <>
      <p>{t('settings.book-wrong')}</p>
      <ul className="bullets">
        {found.findings.map(({ check, sentence }) => (
          <li key={`${check} ${sentence}`}>{sentence}</li>
        ))}
      </ul>
    </>
  )
}
