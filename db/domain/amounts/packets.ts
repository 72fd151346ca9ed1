import { readAmount } from './read-amount.ts'

/** How many packets some typed amounts are: '3 packets of 25' is three, an amount that names no packets is one. */
export function packetsIn(amounts: readonly string[]): number {
  return amounts.reduce((sum, amount) => {
    const reading = readAmount(amount, { packetSeeds: null })
    return sum + (reading.kind === 'amount' ? (reading.packets?.packets ?? 1) : 1)
  }, 0)
}

/** '1 packet', '3 packets'. */
export function packetsInWords(amounts: readonly string[]): string {
  const packets = packetsIn(amounts)
  return packets === 1 ? '1 packet' : `${packets} packets`
}
