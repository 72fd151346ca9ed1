interface PlainSelectProps {
  readonly label: string
  /** The word for no choice. */
  readonly any: string
  readonly value: string
  readonly choices: readonly (readonly [value: string, word: string])[]
  readonly onChange: (value: string) => void
}

/** A choice on one line whose own words say what it narrows; its label is for those who hear the page. */
export function PlainSelect({ label, any, value, choices, onChange }: PlainSelectProps) {
  return (
    <select
      className="plain-select"
      aria-label={label}
      data-narrows={value !== ''}
      value={value}
      onChange={(event) => onChange(event.target.value)}
    >
      <option value="">{any}</option>
      {choices.map(([choice, word]) => (
        <option key={choice} value={choice}>
          {word}
        </option>
      ))}
    </select>
  )
}
