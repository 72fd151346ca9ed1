import { useQuery } from '@tanstack/react-query'
import { call } from '../shared/client/call.ts'
import { useConnection } from '../shared/client/connection.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import './strip.css'

const ASK_AGAIN_MS = 1_500

/** Says calmly that the collection does not answer, and keeps asking until it does. */
export function ConnectionStrip() {
  const { t } = useTexts()
  const away = useConnection() === 'away'
  useQuery({
    queryKey: ['is-anybody-there'],
    queryFn: () => call('collection.get', {}),
    enabled: away,
    retry: false,
    refetchInterval: ASK_AGAIN_MS,
  })
  return (
    <div className="strip-place" role="status">
      {away && <p className="strip row strip-away">{t('app.away')}</p>}
    </div>
  )
}
