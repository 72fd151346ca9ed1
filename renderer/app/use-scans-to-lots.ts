import { type RefObject, useState } from 'react'
import { useLocation } from 'wouter'
import type { Value } from '../../db/contract/contract.ts'
import { type Message, message } from '../../db/messages/message.ts'
import { lotAddress } from '../shared/addresses.ts'
import { call } from '../shared/client/call.ts'
import { ProblemError } from '../shared/client/problem-error.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import { offerScan } from '../shared/scans/scans.ts'
import { typeInto, useScanner } from './use-scanner.ts'

/** Follows scanned labels: to the screen that wants them, else to the lot; an unknown code opens a search. */
export function useScansToLots(findField: RefObject<HTMLDivElement | null>) {
  const [note, setNote] = useState('')
  const [, go] = useLocation()
  const { say } = useTexts()

  const openSearch = (text: string, why: string) => {
    const field = findField.current?.querySelector('input')
    if (!field) return
    field.focus()
    typeInto(field, text)
    setNote(why)
  }

  useScanner(async ({ text, byPlace }) => {
    setNote('')
    try {
      const asTyped = await call('collection.search', { text })
      const lotId = asTyped.exactLotId ?? (await call('collection.search', { text: byPlace })).exactLotId
      if (lotId === null) openSearch(text, say(whyNotFound(text, asTyped.scan)))
      else if (!offerScan(lotId)) go(lotAddress(lotId))
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      openSearch(text, thrown.problem.sentence)
    }
  })

  return { note, clearNote: () => setNote('') }
}

function whyNotFound(text: string, scan: Value<'collection.search'>['scan']): Message {
  return scan === 'does-not-fit'
    ? message('app.scan-misread', { text })
    : message('app.scan-unknown', { text })
}
