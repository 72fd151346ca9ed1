import { readAmount } from './read-amount.ts'

const SEEDS_WHERE_UNKNOWN = 20

/** Seeds in a packet: the crop's usual number, or 20 where it has none. Common practice, no source. */
export function packetSeeds(usual: number | null): number {
  return usual ?? SEEDS_WHERE_UNKNOWN
}

/** How many packets some typed amounts are: '3 packets of 25' is three, an amount that names no packets is one. */
export function packetsIn(amounts: readonly string[]): number {
  return amounts.reduce((sum, amount) => {
    const reading = readAmount(amount, { packetSeeds: null })
    return sum + (reading.kind === 'amount' ? (reading.packets?.packets ?? 1) : 1)
  }, 0)
}
