import { useQuery } from '@tanstack/react-query'
import { languageOf } from '../../../db/messages/languages.ts'
import { createTexts, type Texts, type Translation } from '../../../db/messages/texts.ts'
import { useRead } from '../client/use-read.ts'
import { UNTIL_TOLD } from './manner.ts'

/** Of every language and manner so far: to make one takes as long as to draw some rows. */
const made = new Map<string, Texts & { readonly t: Texts['text'] }>()

const NOT_LOADED: Translation = {}

/** Tells messages in the language of the open collection: `t` one by its id, `say` one that a function gave. */
export function useTexts(): Texts & { readonly t: Texts['text'] } {
  const settings = useRead('collection.get', {}).data?.settings
  const { locale, massUnits } = settings ?? UNTIL_TOLD
  const language = languageOf(settings?.language)
  const { data: translation = NOT_LOADED } = useQuery({
    queryKey: ['translation', language.code],
    queryFn: language.load,
    staleTime: Number.POSITIVE_INFINITY,
  })
  const name = `${language.code} ${locale} ${massUnits} ${translation === NOT_LOADED}`
  const known = made.get(name)
  if (known !== undefined) return known
  const texts = createTexts({ ...language, manner: { locale, massUnits }, translation })
  const told = { ...texts, t: texts.text }
  made.set(name, told)
  return told
}
