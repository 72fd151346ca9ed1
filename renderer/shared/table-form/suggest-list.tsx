import { useEffect } from 'react'
import type { SuggestOption } from './suggest-options.ts'

interface SuggestListProps<T> {
  readonly id: string
  readonly label: string
  readonly shown: boolean
  readonly options: readonly SuggestOption<T>[]
  readonly active: number
  readonly onPick: (option: SuggestOption<T>, list: Element) => void
}

/** The list beneath a field that finds. The focus stays in the field; the marked option is the active descendant. */
export function SuggestList<T>({ id, label, shown, options, active, onPick }: SuggestListProps<T>) {
  useEffect(() => {
    if (shown && active >= 0)
      document.getElementById(optionId(id, active))?.scrollIntoView({ block: 'nearest' })
  }, [id, active, shown])
  return (
    <div id={`${id}-list`} className="suggest-list" role="listbox" aria-label={label} hidden={!shown}>
      {shown &&
        options.map((option, index) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the field that owns this list hears the keys
          <div
            key={option.key}
            id={optionId(id, index)}
            className={`suggest-option choice suggest-option-${option.kind}`}
            role="option"
            tabIndex={-1}
            aria-selected={index === active}
            onMouseDown={(event) => event.preventDefault()}
            onClick={(event) => onPick(option, event.currentTarget)}
          >
            <OptionText option={option} />
          </div>
        ))}
    </div>
  )
}

/** The id of an option, for the field's aria-activedescendant. */
export function optionId(fieldId: string, index: number): string {
  return `${fieldId}-option-${index}`
}

function OptionText<T>({ option }: { readonly option: SuggestOption<T> }) {
  if (option.kind === 'add') return <span className="strong">{option.label}</span>
  if (option.kind === 'standing') return <span className="strong">{option.choice.label}</span>
  return (
    <>
      <span className="strong">{option.suggestion.name}</span>
      <span className="soft">{option.suggestion.detail}</span>
    </>
  )
}
