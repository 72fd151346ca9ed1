import { useEffect, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'

/** The finished pages: to look at, to print from the viewer, or to save. */
export function LabelPages({ made }: { readonly made: Value<'label.print'> }) {
  const [address, setAddress] = useState<string | null>(null)
  useEffect(() => {
    const blob = new Blob([bytesOf(made.pdf)], { type: 'application/pdf' })
    const url = URL.createObjectURL(blob)
    setAddress(url)
    return () => URL.revokeObjectURL(url)
  }, [made.pdf])
  if (address === null) return null
  return (
    <section className="label-pages" aria-label="Labels">
      <p role="status">
        {made.pages === 1 ? 'One page' : `${made.pages} pages`}, true to size: print without fitting to the
        page.{' '}
        <a href={address} download={made.fileName}>
          Save {made.fileName}
        </a>
      </p>
      {made.warnings.map((warning) => (
        <p key={warning} className="label-warning">
          {warning}
        </p>
      ))}
      <iframe
        className="label-frame"
        title="The labels, as they will be printed"
        src={`${address}#navpanes=0&view=FitH`}
      />
    </section>
  )
}

function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0))
}
