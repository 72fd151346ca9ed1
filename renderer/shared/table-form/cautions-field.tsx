import { Caution } from '../../../db/contract/fields.ts'
import { cautionName, cautionTold } from '../../../db/domain/cautions/caution-text.ts'
import { useTexts } from '../format/use-texts.ts'
import { CheckField, TextField } from './fields.tsx'
import { STEPS_APART } from './steps.ts'

interface CautionsFieldProps {
  readonly cautions?: readonly Caution[]
  readonly cautionNote?: string
  readonly onChange: (change: {
    readonly cautions?: readonly Caution[]
    readonly cautionNote?: string
  }) => void
  readonly problem: string | undefined
  /** Whether Enter in the field before passes it by. */
  readonly apart?: boolean
}

/** What seed that comes in has to be careful about, with what it means for it. */
export function CautionsField({
  cautions = [],
  cautionNote = '',
  onChange,
  problem,
  apart,
}: CautionsFieldProps) {
  const { t, say } = useTexts()
  return (
    <fieldset className="stack-2 boxed" {...(apart === true ? { [STEPS_APART]: '' } : {})}>
      <legend className="soft">{t('table.careful-about')}</legend>
      <div className="cautions-boxes fields">
        {Caution.options.map((caution) => (
          <CheckField
            key={caution}
            label={say(cautionName(caution))}
            step={`caution-${caution}`}
            checked={cautions.includes(caution)}
            onChange={(on) =>
              onChange({
                cautions: on ? [...cautions, caution] : cautions.filter((each) => each !== caution),
              })
            }
            meaning={say(cautionTold(caution, cautionNote))}
          />
        ))}
      </div>
      {cautions.length > 0 && (
        <>
          <p className="note strong" role="status">
            {t('table.will-wait')}
          </p>
          <TextField
            label={t('table.what-exactly')}
            step="cautionNote"
            value={cautionNote}
            onChange={(typed) => onChange({ cautionNote: typed })}
            placeholder={t('table.what-exactly-like')}
            problem={problem}
          />
        </>
      )}
    </fieldset>
  )
}
