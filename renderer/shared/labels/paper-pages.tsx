import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import './labels.css'
import { bytesOf } from '../client/file-bytes.ts'
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
      <p role="status">
        {made.pages === 1 ? 'One page.' : `${made.pages} pages.`} Print at 100 %, ‘actual size’: never fitted
        to the page.
      </p>
      <p className="buttons">
        <button
          ref={print}
          type="button"
          className="quiet-button"
          onClick={() =>
            setPrintsHere(printPages(frame.current?.contentWindow, navigator.pdfViewerEnabled !== false))
          }
        >
          Print…
        </button>
        <a href={address} download={made.fileName}>
          Save {made.fileName}
        </a>
      </p>
      <p role="status">
        {!printsHere && (
          <>
            This browser prints them only from a window of their own:{' '}
            <a href={address} target="_blank" rel="noopener">
              open the pages
            </a>{' '}
            and print there, or save and print the file.
          </>
        )}
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
        title={`${name}, as they will be printed`}
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
