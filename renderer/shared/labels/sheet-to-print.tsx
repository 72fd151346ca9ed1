import type { ComponentProps } from 'react'
import type { useRead } from '../client/use-read.ts'
import { useTexts } from '../format/use-texts.ts'
import { ProblemText } from '../parts/problem-text.tsx'
import { PaperPages } from './paper-pages.tsx'

interface SheetToPrintProps {
  readonly className: string
  readonly title: string
  /** What it is for, in a sentence. */
  readonly purpose: string
  /** What is on its pages. */
  readonly name: string
  readonly sheet: Pick<ReturnType<typeof useRead>, 'error' | 'isPending'> & {
    readonly data: ComponentProps<typeof PaperPages>['made'] | undefined
  }
}

/** A sheet to write on by hand, made at once and ready to be printed. */
export function SheetToPrint({ className, title, purpose, name, sheet }: SheetToPrintProps) {
  const { t } = useTexts()
  return (
    <div className={className}>
      <h2 tabIndex={-1}>{title}</h2>
      <p>{purpose}</p>
      {sheet.error !== null && <ProblemText problem={sheet.error.problem} />}
      {sheet.isPending && (
        <p className="soft" role="status">
          {t('labels.making')}
        </p>
      )}
      {sheet.data !== undefined && <PaperPages name={name} made={sheet.data} />}
    </div>
  )
}
