import type { Value } from '../../../db/contract/contract.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The sheet for a fire: when it was printed last, whom to call, and its pages. */
export function FireSheetPart() {
  const { t } = useTexts()
  const standing = useRead('fire-sheet.get', {})
  const pages = useRead('fire-sheet.render', {}, { keepLast: true })
  const today = useToday()
  const printed = useWrite('fire-sheet.mark-printed')
  return (
    <section className="stack-3" aria-label={t('print.fire-sheet')}>
      <h2>{t('print.fire-sheet')}</h2>
      <p className="soft">{t('fire-sheet.about')}</p>
      {standing.data !== undefined && (
        <>
          <Printed standing={standing.data} />
          <WhomToCall key={standing.data.whomToCall} whomToCall={standing.data.whomToCall} />
        </>
      )}
      {pages.error !== null && <ProblemText problem={pages.error.problem} />}
      {pages.isPending && (
        <p className="soft" role="status">
          {t('labels.making')}
        </p>
      )}
      {printed.error !== null && <ProblemText problem={printed.error.problem} />}
      {pages.data !== undefined && (
        <PaperPages name={t('fire-sheet.the-sheet')} made={pages.data}>
          <p className="buttons">
            <ActionButton
              className="quiet-button"
              off={printed.isPending || today === ''}
              onClick={() => printed.mutate({ on: today })}
            >
              {t('fire-sheet.hung-up')}
            </ActionButton>
          </p>
        </PaperPages>
      )}
    </section>
  )
}

function Printed({ standing: { lastPrinted, due } }: { readonly standing: Value<'fire-sheet.get'> }) {
  const { t } = useTexts()
  const last =
    lastPrinted === null ? t('fire-sheet.never') : t('fire-sheet.last', { on: { day: lastPrinted } })
  return <p className={due ? 'caution' : ''}>{due ? `${last} ${t('fire-sheet.due')}` : last}</p>
}

function WhomToCall({ whomToCall }: { readonly whomToCall: string }) {
  const { t } = useTexts()
  const form = useCardForm({ empty: { whomToCall }, writes: 'settings.change' })
  return (
    <CardForm
      title={t('fire-sheet.numbers')}
      sendWord={t('fire-sheet.keep-numbers')}
      {...form.sending({ settings: { whomToCall: form.typed.whomToCall } })}
    >
      <div className="card-form-wide">
        {form.textField('whomToCall', t('fire-sheet.names-and-numbers'), {
          long: true,
          path: 'settings.whomToCall',
          hint: t('fire-sheet.numbers-hint'),
        })}
      </div>
    </CardForm>
  )
}
