export type TypedInto = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement

/** Sets a field through its own setter, so that React hears of it as of something typed. */
export function typeInto(field: TypedInto, value: string): void {
  const setter = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), 'value')?.set
  setter?.call(field, value)
  field.dispatchEvent(new Event(field instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }))
}
