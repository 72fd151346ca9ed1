import { useEffect, useEffectEvent, useId, useRef, useState } from 'react'
import { createPortal } from 'react-dom'
import { fold } from '../../db/domain/shared/fold.ts'
import { GLOSSARY_WORDS } from '../../db/messages/glossary.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import { whenLettersRest } from '../shared/scans/letters.ts'
import { useScanRead } from '../shared/scans/scans.ts'
import './glossary.css'

const TYPED_INTO = ['input', 'textarea', 'select', '[contenteditable]'].join()

/** The button that opens the words of the trade; the key ? opens them wherever no field has the focus. */
export function Glossary() {
  const { t } = useTexts()
  const [open, setOpen] = useState(false)
  useQuestionKey(() => setOpen(true))
  return (
    <>
      <button type="button" className="word-button" aria-keyshortcuts="?" onClick={() => setOpen(true)}>
        {t('glossary.open')} <kbd>?</kbd>
      </button>
      {open && createPortal(<Words onClose={() => setOpen(false)} />, document.body)}
    </>
  )
}

/** Every word with what it means, and a field that narrows them; Escape closes it, and so does a label that is scanned. */
function Words({ onClose }: { readonly onClose: () => void }) {
  const { t, locale } = useTexts()
  const id = useId()
  const dialog = useRef<HTMLDialogElement>(null)
  const [typed, setTyped] = useState('')
  useEffect(() => dialog.current?.showModal(), [])
  useScanRead(() => dialog.current?.close())
  const { compare } = new Intl.Collator(locale)
  const wanted = fold(typed)
  const has = (text: string) => fold(text).includes(wanted)
  const found = GLOSSARY_WORDS.map((key) => ({
    key,
    word: t(`glossary.word.${key}`),
    means: t(`glossary.means.${key}`),
  }))
    .filter(({ word, means }) => has(word) || has(means))
    .toSorted((a, b) => Number(has(b.word)) - Number(has(a.word)) || compare(a.word, b.word))
  return (
    <dialog ref={dialog} className="glossary" aria-labelledby={id} onClose={onClose}>
      <div className="glossary-head stack-2">
        <h2 id={id}>{t('glossary.title')}</h2>
        <search className="row">
          <input
            className="table-input"
            aria-label={t('glossary.find')}
            placeholder={t('glossary.find')}
            autoComplete="off"
            spellCheck={false}
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
          />
          <button type="button" className="quiet-button" onClick={() => dialog.current?.close()}>
            {t('glossary.close')}
          </button>
        </search>
        <p className="soft" role="status">
          {found.length === 0 ? t('glossary.none', { typed }) : t('glossary.shown', { count: found.length })}
        </p>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the arrows scroll it */}
      <section className="glossary-words" aria-labelledby={id} tabIndex={0}>
        <dl className="ruled">
          {found.map(({ key, word, means }) => (
            <div key={key} className="glossary-word">
              <dt className="strong">{word}</dt>
              <dd>{means}</dd>
            </div>
          ))}
        </dl>
      </section>
    </dialog>
  )
}

/**
 * Hears the key ? where no field has the focus. Under a French keyboard a label reader types it for the letter M: what was
 * part of a label asks for nothing.
 */
function useQuestionKey(onAsked: () => void): void {
  const asked = useEffectEvent(onAsked)
  const labelsRead = useRef(0)
  useScanRead(() => {
    labelsRead.current += 1
  })
  useEffect(() => {
    const onKeyDown = async (event: KeyboardEvent) => {
      if (event.key !== '?' || event.ctrlKey || event.altKey || event.metaKey) return
      if (event.target instanceof Element && event.target.closest(TYPED_INTO) !== null) return
      const before = labelsRead.current
      await whenLettersRest()
      if (labelsRead.current === before) asked()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [])
}
