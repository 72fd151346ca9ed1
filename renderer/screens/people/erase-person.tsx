import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { call } from '../../shared/client/call.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { say as tell } from '../../shared/foot-line/said.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { CheckField } from '../../shared/table-form/fields.tsx'

interface ErasePersonProps {
  readonly person: PersonRecord
  readonly onClose: () => void
}

/** Says what erasing takes out, asks about what may mean a plant, and then offers to let go of the older backups. */
export function ErasePerson({ person, onClose }: ErasePersonProps) {
  const { t } = useTexts()
  const write = useWrite('person.erase')
  const traces = useRead('person.list-traces', write.isSuccess ? null : { personId: person.personId })
  const [masked, setMasked] = useState<ReadonlySet<string>>(new Set())
  if (write.isSuccess) return <OlderBackups onClose={onClose} />
  const send = () => write.mutate({ personId: person.personId, mask: [...masked] })
  return (
    <CardForm
      title={t('people.erase-title', { name: person.name })}
      sendWord={t('people.erase-send')}
      busy={write.isPending || traces.data === undefined}
      error={write.error ?? traces.error}
      onSend={send}
      onClose={onClose}
    >
      <div className="card-form-wide">
        <p>{t('people.erase-what-goes')}</p>
        {traces.data !== undefined && traces.data.total > 0 && (
          <Traces found={traces.data} masked={masked} onMask={setMasked} />
        )}
        <p>{t('people.erase-no-undo')}</p>
      </div>
    </CardForm>
  )
}

interface TracesProps {
  readonly found: Value<'person.list-traces'>
  readonly masked: ReadonlySet<string>
  readonly onMask: (masked: ReadonlySet<string>) => void
}

/** Texts with a word of the name that may be a plant's or somebody else's, each to be ticked by the keeper. */
function Traces({ found, masked, onMask }: TracesProps) {
  const { t } = useTexts()
  const { traces, total } = found
  const toggle = (traceId: string, on: boolean) => {
    const next = new Set(masked)
    if (on) next.add(traceId)
    else next.delete(traceId)
    onMask(next)
  }
  return (
    <fieldset className="erase-traces boxed">
      <legend>{t('people.erase-stay', { count: total })}</legend>
      {traces.map(({ traceId, where, text }) => (
        <CheckField
          key={traceId}
          label={`${where}: ${text}`}
          checked={masked.has(traceId)}
          onChange={(on) => toggle(traceId, on)}
        />
      ))}
      {traces.length < total && <p>{t('people.erase-first-shown', { count: traces.length })}</p>}
    </fieldset>
  )
}

/** Says that older backups hold who was erased, and replaces them by a new one where the keeper wants it. */
function OlderBackups({ onClose }: { readonly onClose: () => void }) {
  const queries = useQueryClient()
  const { t } = useTexts()
  const count = useRead('backup.list', {}).data?.backups.length
  const renew = useMutation({
    mutationFn: () => call('backup.create', { deleteOlder: true }),
    onSuccess: ({ file, deleted }) => {
      tell({ said: t('people.erase-backed-up', { file, count: deleted }) })
      void queries.invalidateQueries({ queryKey: ['backup.list'] })
      onClose()
    },
  })
  return (
    <CardForm
      title={t('people.erase-backups-title')}
      sendWord={t('people.erase-backups-send')}
      busy={renew.isPending}
      error={renew.error}
      onSend={() => renew.mutate()}
      onClose={onClose}
    >
      <p className="card-form-wide">{t('people.erase-backups', { count: count ?? 0 })}</p>
    </CardForm>
  )
}
