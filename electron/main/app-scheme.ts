import type { Protocol } from 'electron'
import { PAGE_HEADERS, readBuiltFile } from '../host/built-files.ts'

/** The address of the app's own pages; no other scheme is ever loaded. */
export const SCHEME = 'app'
export const PAGE_HOST = 'drawer'
export const PAGE_ADDRESS = `${SCHEME}://${PAGE_HOST}/`

/** Whether an address is one of the app's own pages, read by its parts and never by how it begins. */
export function isOwnPage(address: string): boolean {
  if (!URL.canParse(address)) return false
  const { protocol, host, username } = new URL(address)
  return protocol === `${SCHEME}:` && host === PAGE_HOST && username === ''
}

/** Serves the built pages under the app's own scheme, and nothing outside their folder. */
export function servePages(protocol: Pick<Protocol, 'handle'>, pages: string): void {
  protocol.handle(SCHEME, async (request) => {
    if (request.method !== 'GET' || !isOwnPage(request.url)) return new Response(null, { status: 403 })
    const file = await readBuiltFile(pages, new URL(request.url).pathname)
    if (file === null) return new Response(null, { status: 404 })
    return new Response(file.body, { headers: { ...PAGE_HEADERS, 'Content-Type': file.type } })
  })
}
