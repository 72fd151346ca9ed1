import type { Value } from '../../../db/contract/contract.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
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
  const form = useCardForm({ empty: { words: kept.words, keeper: kept.keeper }, writes: 'letter.change' })
  const settled = useSettled(JSON.stringify(form.typed), CALM_MS)
  const preview = useRead('letter.render', JSON.parse(settled) as typeof form.typed, { keepLast: true })
  return (
    <>
      <h2>Your thank-you letter</h2>
      <CardForm title="The words of the letter" sendWord="Keep these words" {...form.sending(form.typed)}>
        <div className="card-form-wide print-words">
          {form.textField('words', 'The letter', { long: true })}
        </div>
        {form.textField('keeper', 'Who signs', { hint: 'left empty: the library alone' })}
        <details className="card-form-wide stack-2">
          <summary>Fields that are filled in</summary>
          <FactList facts={kept.fields.map(({ field, meaning }) => ({ name: field, value: meaning }))} />
        </details>
        {form.typed.words !== kept.shipped && (
          <button type="button" className="word-button" onClick={() => form.change({ words: kept.shipped })}>
            put back the words that came with the app
          </button>
        )}
      </CardForm>
      {preview.error !== null && <ProblemText problem={preview.error.problem} />}
      {preview.error === null && preview.data !== undefined && (
        <>
          <h2>
            {preview.data.to === ''
              ? 'As it would go to an invented donor'
              : `As it would go to ${preview.data.to}`}
          </h2>
          <PaperPages name="The letter" made={preview.data} />
        </>
      )}
    </>
  )
}
