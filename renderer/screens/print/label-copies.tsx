import { useEffect, useEffectEvent, useRef, useState } from 'react'
import type { TrayItem } from '../../../db/contract/print-operations.ts'
import { problemAt } from '../../shared/card-form/card-form.tsx'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { TextField } from '../../shared/table-form/fields.tsx'

/** How many labels of a lot, and what they say; kept when the field is left or at Enter. */
export function LabelCopies({ item }: { readonly item: TrayItem }) {
  const { t } = useTexts()
  const change = useWrite('tray.change')
  const [copies, setCopies] = useState(String(item.copies))
  const [contents, setContents] = useState(item.contents)
  const [unread, setUnread] = useState(false)
  const [seen, setSeen] = useState(item)
  // A changed label is another item: what is typed meanwhile can be kept once that has come.
  const changing = change.isPending || (change.isSuccess && change.variables.itemId === item.itemId)
  const sent = change.variables
  if (seen.copies !== item.copies || seen.contents !== item.contents) {
    setSeen(item)
    if (sent === undefined || (copies.trim() === String(sent.copies) && contents === sent.contents)) {
      setCopies(String(item.copies))
      setContents(item.contents)
    }
  }
  const typedOn = useRef(false)
  const keep = () => {
    const wanted = Number(copies.trim())
    const readable = copies.trim() !== '' && Number.isInteger(wanted)
    setUnread(!readable)
    const { copies: keptCopies, contents: keptContents } = changing && sent !== undefined ? sent : item
    const differs = readable && (wanted !== keptCopies || contents.trim() !== keptContents)
    typedOn.current = differs && changing
    if (differs && !changing) change.mutate({ itemId: item.itemId, copies: wanted, contents })
  }
  const onChanged = useEffectEvent(() => {
    if (change.isSuccess) change.reset()
    if (typedOn.current) keep()
  })
  useEffect(() => {
    if (!changing) onChanged()
  }, [changing])
  return (
    <form
      className="print-copies"
      aria-label={t('print.labels-of', { lot: item.title })}
      noValidate
      onKeyDown={(event) => {
        if (event.key === 'Enter') keep()
      }}
      onBlur={keep}
    >
      <TextField
        label={t('print.how-many')}
        value={copies}
        onChange={setCopies}
        problem={unread ? t('print.whole-number') : problemAt(change.error, 'copies')}
      />
      <TextField
        label={t('print.packet-says')}
        value={contents}
        onChange={setContents}
        placeholder={t('print.what-lot-holds')}
        problem={problemAt(change.error, 'contents')}
      />
    </form>
  )
}
