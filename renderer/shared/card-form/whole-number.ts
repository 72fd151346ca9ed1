/** A whole number as typed, grouped or not; null for anything else. */
export function wholeNumber(typed: string): number | null {
  const plain = typed.trim().replace(/[\s'’]/g, '')
  return /^\d{1,9}$/.test(plain) ? Number(plain) : null
}
