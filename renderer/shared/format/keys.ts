/** The name of the key that is held for orders to a window: Cmd on a Mac, Ctrl elsewhere. `platform` as a browser tells it. */
export function orderKey(platform: string): 'Cmd' | 'Ctrl' {
  return /^(mac|iphone|ipad)/i.test(platform) ? 'Cmd' : 'Ctrl'
}

/** That key on this computer. */
export const ORDER_KEY = orderKey(typeof navigator === 'undefined' ? '' : navigator.platform)
