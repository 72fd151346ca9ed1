import { useEffect, useState } from 'react'
import type { PlaceClimate, ReadFile } from '../../../db/contract/storage-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { FileField } from '../../shared/parts/file-field.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { CheckField, SelectField } from '../../shared/table-form/fields.tsx'
import { textOfFile } from './text-of-file.ts'
import { UNITS } from './typed-number.ts'

interface ImportFormProps {
  readonly climate: PlaceClimate
  readonly onClose: () => void
}

const ORDERS = ['day-first', 'month-first'] as const

const AS_IT_IS = {
  unit: '' as '' | (typeof UNITS)[number]['value'],
  order: '' as '' | (typeof ORDERS)[number],
  temperature: '',
  humidity: '',
}

/** No column: a file may hold something like humidity that is none. */
const NONE = 'none'

/** The columns of the file to choose among; they stay while a choice is being looked at. */
function useColumns(file: ReadFile | undefined) {
  const [columns, setColumns] = useState<readonly { value: string; label: string }[]>([])
  useEffect(() => {
    if (file === undefined || file.kind === 'unreadable') return
    setColumns(file.columns.map(({ column, name }) => ({ value: String(column), label: name })))
  }, [file])
  return columns
}

/** Takes a data logger's file in: how it is understood is shown first, and nothing is written until the keeper says so. */
export function ImportForm({ climate, onClose }: ImportFormProps) {
  const { placeId } = climate.place
  const { t } = useTexts()
  const asFound = { value: '', label: t('storage.as-found') } as const
  const [file, setFile] = useState<{ readonly fileName: string; readonly text: string } | null>(null)
  const [typed, setTyped] = useState(AS_IT_IS)
  const [leaveOut, setLeaveOut] = useState(false)
  const choose = <K extends keyof typeof AS_IT_IS>(name: K) => ({
    value: typed[name],
    onChange: (value: (typeof AS_IT_IS)[K]) => setTyped({ ...typed, [name]: value }),
  })
  const { unit, order, temperature, humidity } = typed
  const choices = {
    ...(unit === '' ? {} : { unit }),
    ...(order === '' ? {} : { order }),
    ...(temperature === '' ? {} : { temperature: Number(temperature) }),
    ...(humidity === '' ? {} : { humidity: humidity === NONE ? null : Number(humidity) }),
  }
  const input = file === null ? null : { placeId, ...file, choices }
  const seen = useRead('reading.preview-file', input)
  const columns = useColumns(seen.data)
  const write = useWrite('reading.import-file')
  const ready =
    seen.data?.kind === 'read' && seen.data.readings > 0 && (seen.data.refusedRows === 0 || leaveOut)
  return (
    <CardForm
      title={t('storage.take-file-in')}
      sendWord={
        seen.data?.kind === 'read' && seen.data.readings > 0
          ? t('storage.take-readings-in', { readings: seen.data.readings })
          : t('storage.take-it-in')
      }
      busy={write.isPending || !ready}
      error={write.error}
      onSend={() => {
        if (input !== null) write.mutate({ ...input, leaveOut }, { onSuccess: onClose })
      }}
      onClose={onClose}
    >
      <div className="card-form-wide">
        <FileField
          label={t('storage.the-file')}
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          onPick={async (picked) => {
            setFile({ fileName: picked.name, text: await textOfFile(picked) })
            setLeaveOut(false)
            setTyped((now) => ({ ...now, temperature: '', humidity: '' }))
            write.reset()
          }}
        />
      </div>
      {file !== null && (
        <>
          <SelectField
            label={t('storage.degrees')}
            size="record"
            options={[asFound, ...UNITS]}
            {...choose('unit')}
          />
          <SelectField
            label={t('storage.dates')}
            size="record"
            options={[asFound, ...ORDERS.map((value) => ({ value, label: t(`storage.order-${value}`) }))]}
            {...choose('order')}
          />
          <SelectField
            label={t('storage.temperature-is')}
            size="record"
            options={[asFound, ...columns]}
            {...choose('temperature')}
          />
          <SelectField
            label={t('storage.humidity-is')}
            size="record"
            options={[asFound, { value: NONE, label: t('storage.in-none') }, ...columns]}
            {...choose('humidity')}
          />
        </>
      )}
      <div className="card-form-wide" role="status">
        {file !== null && seen.data === undefined && seen.error === null && (
          <p>{t('storage.looking-at-file')}</p>
        )}
        {seen.data !== undefined && <Understood file={seen.data} />}
      </div>
      {seen.error !== null && <ProblemText problem={seen.error.problem} />}
      {seen.data?.kind === 'read' && seen.data.refusedRows > 0 && (
        <CheckField
          label={t('storage.leave-rows-out', { rows: seen.data.refusedRows })}
          step="leave-out"
          checked={leaveOut}
          onChange={setLeaveOut}
        />
      )}
    </CardForm>
  )
}

function Understood({ file }: { readonly file: ReadFile }) {
  const { t } = useTexts()
  if (file.kind !== 'read') return <p className="caution">{file.because}</p>
  const day = (at: string | null) => ({ day: (at ?? '').slice(0, 10) })
  return (
    <div className="stack-2">
      <p>
        {file.readings === 0
          ? t('storage.file-none-new')
          : t('storage.file-readings', {
              readings: file.readings,
              from: day(file.from),
              until: day(file.until),
            })}{' '}
        {file.already > 0 && t('storage.file-already', { readings: file.already })}
      </p>
      <ul className="bullets">
        {file.understood.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {file.sample.slice(0, 2).map(({ at, words }) => (
          <li key={at}>{t('storage.file-sample', { day: day(at), time: at.slice(11), air: words })}</li>
        ))}
      </ul>
      {file.refusedRows > 0 && (
        <details open={file.refusedRows <= 5}>
          <summary>{t('storage.file-refused', { rows: file.refusedRows })}</summary>
          <ul className="bullets">
            {file.refused.map(({ row, text, because }) => (
              <li key={`${row} ${text}`}>
                {row === 0 ? text : t('storage.file-row', { row: String(row) })}: {because}
              </li>
            ))}
          </ul>
          {file.refusedRows > file.refused.length && <p>{t('storage.file-more-refused')}</p>}
        </details>
      )}
    </div>
  )
}
