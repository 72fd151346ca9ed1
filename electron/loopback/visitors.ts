import type { ServerResponse } from 'node:http'

/** How long the host stays after its last page has gone, milliseconds: a page that reloads comes back sooner. */
const STAYS_MS = 4_000
const SIGN_OF_LIFE_MS = 15_000

/** The pages that are open, each known by a connection that it holds open; a closed page drops it. */
export class Visitors {
  readonly #open = new Set<ServerResponse>()
  readonly #whenGone: () => void
  readonly #staysMs: number
  #leaving: NodeJS.Timeout | null = null
  #dismissed = false

  constructor(whenGone: () => void, staysMs: number = STAYS_MS) {
    this.#whenGone = whenGone
    this.#staysMs = staysMs
  }

  get count(): number {
    return this.#open.size
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
      if (this.#open.size === 0 && !this.#dismissed) this.#leaving = setTimeout(this.#whenGone, this.#staysMs)
    })
  }

  /** Lets go of every page, when the host ends. */
  dismiss(): void {
    this.#dismissed = true
    if (this.#leaving !== null) clearTimeout(this.#leaving)
    for (const response of this.#open) response.end()
  }
}
