import { type KeyboardEvent, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Message } from '../../../db/messages/message.ts'
import { ProblemError } from '../client/problem-error.ts'
import { useTexts } from '../format/use-texts.ts'
import { saidBy } from './said.ts'
import { useSteps } from './step-form.tsx'
import { suggestKey } from './suggest-key.ts'
import {
  type AddNew,
  firstActive,
  movedActive,
  type StandingChoice,
  type SuggestOption,
  spokenOptions,
  suggestOptions,
} from './suggest-options.ts'
import { useHeldKeys } from './use-held-keys.ts'
import { type SuggestionSource, useSuggestions } from './use-suggestions.ts'

/** What a field that finds has to be told. */
export interface SuggestAsk<T> {
  readonly text: string
  /** Whether the text stands for something that was picked or made. */
  readonly chosen: boolean
  readonly onText: (text: string) => void
  readonly source: SuggestionSource<T>
  readonly onPick: (item: T) => void
  readonly addNew?: AddNew & { readonly onAdd: (text: string) => void }
  readonly standing?: readonly StandingChoice[]
  readonly nothingFound: (text: string) => Message | string
}

const NO_STANDING: readonly StandingChoice[] = []

/** The behaviour of a field that finds: its list, which option is marked, and what each key does. */
export function useSuggestField<T>(ask: SuggestAsk<T>) {
  const { text, chosen, standing = NO_STANDING } = ask
  const [open, setOpen] = useState(false)
  const [moved, setMoved] = useState<number | null>(null)
  const [trouble, setTrouble] = useState<string | undefined>(undefined)
  const steps = useSteps()
  const texts = useTexts()
  const suggestions = useSuggestions(ask.source, text, open)
  const offer = (found: typeof suggestions.found) => suggestOptions(found, text, ask.addNew, standing)
  const options = offer(suggestions.found)
  const activeOf = (of: typeof options) =>
    moved !== null && moved < of.length ? moved : firstActive(of, text)
  const active = activeOf(options)

  const close = () => {
    setOpen(false)
    setMoved(null)
  }
  const show = () => {
    setOpen(true)
    setTrouble(undefined)
  }
  /** Takes an option before this returns, so that the fields it brings are on the page when going on. */
  const pick = (option: SuggestOption<T> | undefined): boolean => {
    if (option === undefined) {
      setTrouble(saidBy(texts, ask.nothingFound(text.trim())))
      return false
    }
    flushSync(() => {
      close()
      setTrouble(undefined)
      if (option.kind === 'found') ask.onPick(option.suggestion.item)
      if (option.kind === 'add') ask.addNew?.onAdd(option.text)
      if (option.kind === 'standing') option.choice.onPick()
    })
    return true
  }
  const held = useHeldKeys()
  /** What is found for the text as it stands, once that is known; undefined where it cannot be asked. */
  const optionsFound = async () => {
    try {
      return offer(await suggestions.findNow())
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      setTrouble(thrown.problem.sentence)
      return undefined
    }
  }
  const pickWhenFound = async () => {
    const found = await optionsFound()
    return found !== undefined && pick(found[activeOf(found)])
  }
  const take = (event: KeyboardEvent<HTMLInputElement>, thenGoOn: boolean) => {
    const typed = text.trim() !== ''
    const opens = thenGoOn && !open && !chosen && (typed || standing.length > 0)
    if (opens) {
      event.preventDefault()
      return show()
    }
    if (!open || (!thenGoOn && !typed)) return
    const found = suggestions.answersText
    // The key is dealt with here: outside a table form it would send the form around it, with what it just picked.
    if (thenGoOn) event.preventDefault()
    if (found && pick(options[active])) {
      if (thenGoOn) steps.goOn(event.currentTarget)
      return
    }
    if (found) return
    const input = event.currentTarget
    if (thenGoOn) {
      void held.holdUntil(async () => {
        const picked = await pickWhenFound()
        if (picked) steps.goOn(input)
        return picked
      })
    } else {
      // What is picked may bring the field that Tab leads to.
      void held.holdKey(event, async () => {
        if (!(await pickWhenFound())) flushSync(close)
      })
    }
  }
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (held.catches(event)) return
    const asked = suggestKey(event)
    if (asked === 'take' || asked === 'take-and-go-on') return take(event, asked === 'take-and-go-on')
    if (asked === null || (asked === 'close' && !open)) return
    event.preventDefault()
    if (asked === 'close') return close()
    if (!open) return show()
    const by = asked === 'down' ? 1 : -1
    if (suggestions.answersText) return setMoved(movedActive(active, by, options.length))
    void held.holdUntil(async () => {
      const found = await optionsFound()
      if (found !== undefined) flushSync(() => setMoved(movedActive(activeOf(found), by, found.length)))
      return found !== undefined
    })
  }
  return {
    open,
    options,
    active,
    close,
    onKeyDown,
    onClick: () => {
      if (!chosen) show()
    },
    trouble: trouble ?? suggestions.failure,
    spoken:
      open && suggestions.answersText
        ? spokenOptions(options)
            .map((part) => saidBy(texts, part))
            .join('. ')
        : '',
    onText: (next: string) => {
      setMoved(null)
      show()
      ask.onText(next)
    },
    pickByPointer: (option: SuggestOption<T>, list: Element) => {
      pick(option)
      steps.goOn(list)
    },
  }
}
