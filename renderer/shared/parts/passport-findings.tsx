import { useTexts } from '../format/use-texts.ts'

interface Finding<T> {
  readonly level: 'error' | 'warning'
  readonly sentence: string
  readonly times: number
  readonly first: T
}

interface PassportFindingsProps<T> {
  readonly findings: readonly Finding<T>[]
  /** Of how many it is true, and of which first. */
  readonly where: (finding: Finding<T>) => string
}

/** What does not fit the Multi-Crop Passport Descriptors, each once: what breaks their form before what is only odd. */
export function PassportFindings<T>({ findings, where }: PassportFindingsProps<T>) {
  const { t } = useTexts()
  return (
    <ul className="ruled">
      {findings.map((finding) => (
        <li key={finding.sentence}>
          <strong>{t(finding.level === 'error' ? 'findings.does-not-fit' : 'findings.look')}:</strong>{' '}
          {finding.sentence} <span className="soft">({where(finding)})</span>
        </li>
      ))}
    </ul>
  )
}
