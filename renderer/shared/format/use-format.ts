import { useMemo } from 'react'
import { useRead } from '../client/use-read.ts'
import { createFormat, type Format } from './format.ts'

/** The formats of the open collection's locale. */
export function useFormat(): Format {
  const about = useRead('collection.about', {})
  const locale = about.data?.settings.locale ?? 'en-GB'
  return useMemo(() => createFormat(locale), [locale])
}
