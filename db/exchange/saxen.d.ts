declare module 'saxen' {
  type Decode = (text: string) => string

  interface Hooks {
    openTag: (name: string, attributes: () => Record<string, string>) => void
    closeTag: (name: string) => void
    text: (text: string, decode: Decode) => void
    cdata: (text: string) => void
    error: (problem: Error) => void
  }

  export class Parser {
    on<H extends keyof Hooks>(hook: H, listener: Hooks[H]): this
    parse(xml: string): this
  }
}
