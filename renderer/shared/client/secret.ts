const KEPT_AS = 'drawer-secret'

/** Takes the secret of this run out of the address of the first load and keeps it for this window only. */
export function takeSecretFromAddress(): void {
  const found = /^#secret=([A-Za-z0-9_-]+)$/.exec(location.hash)?.[1]
  if (found === undefined) return
  sessionStorage.setItem(KEPT_AS, found)
  history.replaceState(null, '', location.pathname)
}

export function keptSecret(): string {
  return sessionStorage.getItem(KEPT_AS) ?? ''
}
