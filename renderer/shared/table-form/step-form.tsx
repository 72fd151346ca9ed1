import {
  createContext,
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
  useContext,
  useState,
} from 'react'
import { SizeInForm } from './fields.tsx'
import { moveFrom } from './steps.ts'
import { useNewest } from './use-newest.ts'

interface Steps {
  /** Goes on from a field as Enter does: to the next step, or ends the form. */
  goOn(from: Element): void
  /** Goes on to the next step where there is one, and never ends the form: what follows is to be looked at first. */
  goToNext(from: Element): void
}

const StepsContext = createContext<Steps>({ goOn: () => undefined, goToNext: () => undefined })

/** The way on from inside a field, for one that finds its answer after Enter was pressed. */
export function useSteps(): Steps {
  return useContext(StepsContext)
}

interface StepFormProps {
  readonly label: string
  readonly className?: string
  readonly form: RefObject<HTMLElement | null>
  /** Enter on the last step. */
  readonly onEnd: () => void
  /** Enter or Escape at the end of a part that is gone through by itself. */
  readonly onEndApart: () => void
  /** Ctrl or Cmd with Enter, from anywhere inside. */
  readonly onSave: () => void
  /** Shift with Enter: what else there is to say. */
  readonly onMore: () => void
  /** Whether a key was caught before any field sees it, as while an answer is on its way. */
  readonly catches?: (event: KeyboardEvent) => boolean
  readonly children: ReactNode
}

/**
 * A form for the table: Enter goes on, Escape steps back, and no single letter does anything but be typed.
 *
 * A field that uses a key for itself marks the event as dealt with (preventDefault).
 */
export function StepForm({
  label,
  className,
  form,
  onEnd,
  onEndApart,
  onSave,
  onMore,
  catches,
  children,
}: StepFormProps) {
  // A field may go on in the same moment as it changes: the end must see what it changed.
  const ends = useNewest({ onEnd, onEndApart })
  const [steps] = useState<Steps>(() => ({
    goOn: (from) => {
      const moved = form.current && moveFrom(form.current, from, 1)
      if (moved === 'end') ends.current.onEnd()
      if (moved === 'end-apart') ends.current.onEndApart()
    },
    goToNext: (from) => {
      if (form.current) moveFrom(form.current, from, 1)
    },
  }))
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const from = event.target as Element
    const key = keyMeaning(event)
    if (key === null || event.defaultPrevented || form.current === null) return
    if (key === 'go-on' && !goesOnWithEnter(from)) return
    event.preventDefault()
    if (key === 'save') onSave()
    if (key === 'more') onMore()
    if (key === 'back' && moveFrom(form.current, from, -1) === 'end-apart') onEndApart()
    if (key === 'go-on') steps.goOn(from)
  }
  return (
    <StepsContext.Provider value={steps}>
      <section
        ref={form}
        className={className}
        aria-label={label}
        onKeyDownCapture={(event) => {
          if (catches?.(event)) event.stopPropagation()
        }}
        onKeyDown={onKeyDown}
      >
        <SizeInForm value="table">{children}</SizeInForm>
      </section>
    </StepsContext.Provider>
  )
}

function keyMeaning(event: KeyboardEvent): 'go-on' | 'back' | 'save' | 'more' | null {
  if (event.key === 'Escape') return 'back'
  if (event.key !== 'Enter' || event.altKey) return null
  if (event.ctrlKey || event.metaKey) return 'save'
  if (event.shiftKey) return event.target instanceof HTMLTextAreaElement ? null : 'more'
  return 'go-on'
}

/** A button or a link does its own thing with Enter. */
function goesOnWithEnter(element: Element): boolean {
  return element.closest('button, a, summary') === null
}
