import { type ReactNode, type RefObject, useEffect, useId, useLayoutEffect, useRef, useState } from 'react'
import { useTexts } from '../format/use-texts.ts'
import { beneathId, FieldFrame, type FieldSize } from './fields.tsx'
import type { SuggestOption } from './suggest-options.ts'
import { type SuggestAsk, useSuggestField } from './use-suggest-field.ts'

interface SuggestFieldProps<T> extends SuggestAsk<T> {
  readonly label: string
  /** Names the step in a StepForm. */
  readonly step?: string
  readonly placeholder?: string
  readonly words?: ReactNode
  readonly spoken?: string
  readonly problem?: string | undefined
  readonly size?: FieldSize
}

/**
 * A field that finds by a few letters: the first that fits is marked, arrows move, Enter or Tab takes it.
 *
 * Follows the combobox pattern with a list and automatic selection (W3C ARIA Authoring Practices Guide). Built here
 * because Enter must take an answer that is still on its way, which the combobox of the interface library does not.
 */
export function SuggestField<T>(props: SuggestFieldProps<T>) {
  const { label, step, text, chosen, problem, size = 'record' } = props
  const id = useId()
  const field = useSuggestField(props)
  const { t } = useTexts()
  const listed = field.open && field.options.length > 0
  const input = useRef<HTMLInputElement>(null)
  const cut = useCutOff(input, text)
  return (
    <FieldFrame
      label={label}
      controlId={id}
      size={size}
      problem={problem ?? field.trouble}
      words={
        <>
          {chosen && cut && <p>{text}</p>}
          {props.words}
        </>
      }
      spoken={field.open ? field.spoken : (props.spoken ?? '')}
    >
      <div className="suggest-anchor">
        <input
          ref={input}
          id={id}
          className="table-input"
          role="combobox"
          aria-expanded={listed}
          aria-controls={`${id}-list`}
          aria-autocomplete="list"
          aria-activedescendant={listed && field.active >= 0 ? optionId(id, field.active) : undefined}
          aria-describedby={beneathId(id)}
          aria-invalid={problem !== undefined}
          data-step={step}
          data-chosen={chosen}
          autoComplete="off"
          spellCheck={false}
          placeholder={props.placeholder}
          value={text}
          onChange={(event) => field.onText(event.target.value)}
          onKeyDown={field.onKeyDown}
          onClick={field.onClick}
          onBlur={field.close}
        />
        <SuggestList
          id={id}
          label={t('table.what-fits', { label })}
          shown={listed}
          options={field.options}
          active={field.active}
          onPick={field.pickByPointer}
        />
      </div>
    </FieldFrame>
  )
}

/** Whether a field is too narrow for its text, so that the whole of it must be said beneath. */
function useCutOff(input: RefObject<HTMLInputElement | null>, text: string): boolean {
  const [cut, setCut] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: measured anew for each text
  useLayoutEffect(() => {
    const field = input.current
    if (field === null) return
    const measure = () => setCut(field.scrollWidth > field.clientWidth)
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(field)
    return () => watch.disconnect()
  }, [input, text])
  return cut
}

interface SuggestListProps<T> {
  readonly id: string
  readonly label: string
  readonly shown: boolean
  readonly options: readonly SuggestOption<T>[]
  readonly active: number
  readonly onPick: (option: SuggestOption<T>, list: Element) => void
}

/** The list beneath a field that finds. The focus stays in the field; the marked option is the active descendant. */
function SuggestList<T>({ id, label, shown, options, active, onPick }: SuggestListProps<T>) {
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
function optionId(fieldId: string, index: number): string {
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
