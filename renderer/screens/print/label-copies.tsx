import { useState } from 'react'
import type { TrayItem } from '../../../db/contract/print-operations.ts'
import { problemAt } from '../../shared/card-form/card-form.tsx'
import { useWrite } from '../../shared/client/use-write.ts'
import { TextField } from '../../shared/table-form/text-field.tsx'

/** How many labels of a lot, and what they say; kept when the field is left or at Enter. */
export function LabelCopies({ item }: { readonly item: TrayItem }) {
  const change = useWrite('tray.change')
  const [copies, setCopies] = useState(String(item.copies))
  const [contents, setContents] = useState(item.contents)
  const [unread, setUnread] = useState(false)
  const [seen, setSeen] = useState(item)
  if (seen.copies !== item.copies || seen.contents !== item.contents) {
    setSeen(item)
    setCopies(String(item.copies))
    setContents(item.contents)
  }
  const keep = () => {
    const wanted = Number(copies.trim())
    const readable = copies.trim() !== '' && Number.isInteger(wanted)
    setUnread(!readable)
    if (!readable || change.isPending) return
    const kept = change.isSuccess && change.variables.itemId === item.itemId ? change.variables : item
    if (wanted === kept.copies && contents.trim() === kept.contents) return
    change.mutate({ itemId: item.itemId, copies: wanted, contents })
  }
  return (
    <form
      className="print-copies"
      aria-label={`Labels of ${item.title}`}
      noValidate
      onKeyDown={(event) => {
        if (event.key === 'Enter') keep()
      }}
      onBlur={keep}
    >
      <TextField
        label="How many"
        size="record"
        value={copies}
        onChange={setCopies}
        problem={unread ? 'Type a whole number, such as 8.' : problemAt(change.error, 'copies')}
      />
      <TextField
        label="The packet says"
        size="record"
        value={contents}
        onChange={setContents}
        placeholder="what the lot holds"
        problem={problemAt(change.error, 'contents')}
      />
    </form>
  )
}
