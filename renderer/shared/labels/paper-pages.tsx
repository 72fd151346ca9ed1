import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import './labels.css'
import { message } from '../../../db/messages/message.ts'
import { bytesOf } from '../client/file-bytes.ts'
import { useTexts } from '../format/use-texts.ts'
import { printPages } from './print-pages.ts'

interface PaperPagesProps {
  /** What is on the pages, such as 'The labels'. */
  readonly name: string
  readonly made: Pick<Value<'label.print'>, 'pdf' | 'pages' | 'fileName' | 'warnings'>
  /** What else can be done with the pages: before them, since Tab goes through every part of a shown PDF. */
  readonly children?: ReactNode
  /** Goes to the pages as soon as they are made, so that they are in view and Enter prints them. */
  readonly takesFocus?: boolean
}

/** The finished pages: to look at, to print, or to save. */
export function PaperPages({ name, made, children, takesFocus = false }: PaperPagesProps) {
  const { t, pieces } = useTexts()
  const frame = useRef<HTMLIFrameElement>(null)
  const print = useRef<HTMLButtonElement>(null)
  const [printsHere, setPrintsHere] = useState(true)
  const address = useAddress(made.pdf)
  useEffect(() => {
    if (takesFocus && address !== null) print.current?.focus()
  }, [takesFocus, address])
  if (address === null) return null
  return (
    <section className="label-pages stack-2" aria-label={name}>
      <p role="status">{t('labels.made', { pages: made.pages })}</p>
      <p className="buttons">
        <button
          ref={print}
          type="button"
          className="quiet-button"
          onClick={() =>
            setPrintsHere(printPages(frame.current?.contentWindow, navigator.pdfViewerEnabled !== false))
          }
        >
          {t('labels.print')}
        </button>
        <a href={address} download={made.fileName}>
          {t('labels.save', { file: made.fileName })}
        </a>
      </p>
      <p role="status">
        {!printsHere &&
          pieces(message('labels.own-window'), {
            link: (words) => (
              <a key="pages" href={address} target="_blank" rel="noopener">
                {words}
              </a>
            ),
          })}
      </p>
      {made.warnings.map((warning) => (
        <p key={warning} className="label-warning note">
          {warning}
        </p>
      ))}
      {children}
      <iframe
        ref={frame}
        className="label-frame"
        title={t('labels.as-printed', { name })}
        src={`${address}#navpanes=0&view=FitH`}
      />
    </section>
  )
}

/** An address of the PDF inside this window, for as long as it is shown. */
function useAddress(pdf: string): string | null {
  const [address, setAddress] = useState<string | null>(null)
  useEffect(() => {
    const blob = new Blob([bytesOf(pdf)], { type: 'application/pdf' })
    const url = URL.createObjectURL(blob)
    setAddress(url)
    return () => URL.revokeObjectURL(url)
  }, [pdf])
  return address
}
