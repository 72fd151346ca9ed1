import { useEffect } from 'react'
import { useRead } from '../shared/client/use-read.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import { useCardName } from '../shared/panes/card.tsx'

let arrivedBefore = false

/**
 * Names the window after the card and the screen that are open and, on every arrival but the first, moves the focus into it: to the field that the
 * screen itself focused, else to its heading.
 */
export function Arrived({ title }: { readonly title: string }) {
  const { t } = useTexts()
  const library = useRead('collection.get', {}).data?.settings.libraryName
  const card = useCardName()
  useEffect(() => {
    document.title = [card, title, library, t('app.name')]
      .filter((part) => part !== null && part !== undefined)
      .join(' · ')
  }, [card, title, library, t])
  useEffect(() => {
    if (arrivedBefore) focusScreen()
    arrivedBefore = true
  }, [])
  return null
}

function focusScreen(): void {
  const main = document.querySelector<HTMLElement>('main')
  if (main === null || main.contains(document.activeElement)) return
  const heading = main.querySelector<HTMLElement>('h1')
  heading?.setAttribute('tabindex', '-1')
  ;(heading ?? main).focus()
}
