import { useEffect } from 'react'
import { useRead } from '../shared/client/use-read.ts'

/** Dresses the page as the collection's settings say: light, dark or as the system. */
export function useAppearance(): void {
  const settings = useRead('collection.get', {}).data?.settings
  const appearance = settings?.appearance
  useEffect(() => {
    if (appearance === undefined) return
    document.documentElement.dataset['appearance'] = appearance
  }, [appearance])
}
