const KEPT_AS = 'drawer-secret'

/** Takes the secret of this run out of the address of the first load and keeps it for this window only. */
export function takeSecretFromAddress(): void {
  const found = /^#secret=([A-Za-z0-9_-]+)$/.exec(location.hash)?.[1]
  if (found === undefined) return
  sessionStorage.setItem(KEPT_AS, found)
  history.replaceState(null, '', location.pathname)
}

/** Posts to the host on this machine with the secret of this run; what outlives the page is sent though it closes. */
export function tellHost(path: string, outlivesPage: boolean, body?: string): Promise<Response> {
  return fetch(path, {
    method: 'POST',
    keepalive: outlivesPage,
    headers: {
      'Content-Type': 'application/json',
      'X-Drawer-Secret': sessionStorage.getItem(KEPT_AS) ?? '',
    },
    ...(body === undefined ? {} : { body }),
  })
}
