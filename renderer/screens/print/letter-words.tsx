import type { Value } from '../../../db/contract/contract.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { useSettled } from '../../shared/table-form/use-settled.ts'

const CALM_MS = 500

/** The thank-you letter in the library's own words, with a real donor's letter beneath as it would come out. */
export function LetterWords() {
  const kept = useRead('letter.get', {})
  if (kept.error !== null) return <ProblemText problem={kept.error.problem} />
  return kept.data === undefined ? null : <WordsForm kept={kept.data} />
}

function WordsForm({ kept }: { readonly kept: Value<'letter.get'> }) {
  const { t } = useTexts()
  const form = useCardForm({ empty: { words: kept.words, keeper: kept.keeper }, writes: 'letter.change' })
  const settled = useSettled(JSON.stringify(form.typed), CALM_MS)
  const preview = useRead('letter.render', JSON.parse(settled) as typeof form.typed, { keepLast: true })
  return (
    <>
      <h2>{t('print.letter-heading')}</h2>
      <CardForm title={t('print.words')} sendWord={t('print.letter-keep')} {...form.sending(form.typed)}>
        <div className="card-form-wide print-words">
          {form.textField('words', t('print.letter-field'), { long: true })}
        </div>
        {form.textField('keeper', t('print.letter-signs'), { hint: t('print.letter-signs-hint') })}
        <details className="card-form-wide stack-2">
          <summary>{t('print.letter-fields')}</summary>
          <FactList facts={kept.fields.map(({ field, meaning }) => ({ name: field, value: meaning }))} />
        </details>
        {form.typed.words !== kept.shipped && (
          <button type="button" className="word-button" onClick={() => form.change({ words: kept.shipped })}>
            {t('print.letter-shipped')}
          </button>
        )}
      </CardForm>
      {preview.error !== null && <ProblemText problem={preview.error.problem} />}
      {preview.error === null && preview.data !== undefined && (
        <>
          <h2>
            {preview.data.to === ''
              ? t('print.letter-invented')
              : t('print.letter-to', { donor: preview.data.to })}
          </h2>
          <PaperPages name={t('print.letter-field')} made={preview.data} />
        </>
      )}
    </>
  )
}
