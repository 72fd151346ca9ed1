/** Stops the compiler, and then the program, when a closed set has a member that nobody handled. */
export function assertNever(value: never, because: string): never {
  throw new Error(`${because}: ${JSON.stringify(value)}`)
}
