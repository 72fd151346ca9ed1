import type { ServerResponse } from 'node:http'

/** How long the host stays after its last page has gone, milliseconds. */
export interface Stays {
  /** A page that said goodbye: one that reloads comes back sooner. */
  readonly afterGoodbye: number
  /** A page whose line broke without a word: it may be asleep and come back. */
  readonly afterSilence: number
}

const STAYS: Stays = { afterGoodbye: 4_000, afterSilence: 600_000 }
const SIGN_OF_LIFE_MS = 15_000

/** The pages that are open, each known by a connection that it holds open; a closed page says goodbye and drops it. */
export class Visitors {
  readonly #open = new Set<ServerResponse>()
  readonly #whenGone: () => void
  readonly #stays: Stays
  #leaving: NodeJS.Timeout | null = null
  #goodbyeAt = Number.NEGATIVE_INFINITY
  #dismissed = false

  constructor(whenGone: () => void, stays: Stays = STAYS) {
    this.#whenGone = whenGone
    this.#stays = stays
  }

  /** Keeps a response open for as long as its page is there. */
  welcome(response: ServerResponse): void {
    if (this.#leaving !== null) clearTimeout(this.#leaving)
    this.#leaving = null
    this.#open.add(response)
    response.writeHead(200, { 'Content-Type': 'text/plain', 'Cache-Control': 'no-store' })
    response.write('.')
    const sign = setInterval(() => response.write('.'), SIGN_OF_LIFE_MS)
    response.on('close', () => {
      clearInterval(sign)
      this.#open.delete(response)
      if (this.#open.size === 0) this.#waitForReturn()
    })
  }

  /** Hears that a page is left, for good or to be loaded again, or that its browser ended: none is asleep. */
  hearGoodbye(): void {
    this.#goodbyeAt = performance.now()
    if (this.#open.size === 0) this.#waitForReturn()
  }

  #waitForReturn(): void {
    if (this.#dismissed) return
    if (this.#leaving !== null) clearTimeout(this.#leaving)
    const { afterGoodbye, afterSilence } = this.#stays
    const saidGoodbye = performance.now() - this.#goodbyeAt < afterGoodbye
    this.#leaving = setTimeout(this.#whenGone, saidGoodbye ? afterGoodbye : afterSilence)
  }

  /** Lets go of every page, when the host ends. */
  dismiss(): void {
    this.#dismissed = true
    if (this.#leaving !== null) clearTimeout(this.#leaving)
    for (const response of this.#open) response.end()
  }
}
