import { contract, type OperationName, type ParsedInput, type Value } from '../../db/contract/contract.ts'
import type { Problem } from '../../db/contract/problem.ts'
import { Refusal } from '../../db/contract/refusal.ts'
import type { OpenCollection } from '../../db/migrations/open-file.ts'
import type { ServiceName } from '../../db/services/run-operation.ts'
import type { Runner } from './answer-call.ts'
import { demoFile, freeFile, lastOpen, rememberOpen } from './collections-folder.ts'
import { makeDemoAt, sayDemoOpened } from './demo.ts'
import type { Hands } from './hands.ts'
import { problemOf } from './problem-of.ts'
import { Turns } from './turns.ts'

/**
 * Holds the one collection that is open, and changes which one it is.
 *
 * Where no collection could be opened, every call is refused with the reason, but for those that open another.
 */
export class CollectionHolder implements Runner {
  readonly #folder: string
  readonly #hands: Hands
  readonly #turns = new Turns()
  #open: OpenCollection | null = null
  #whyNone: Problem | null = null
  #begun: { readonly key: string; readonly input: string; readonly value: Value<'collection.start'> } | null =
    null

  constructor(folder: string, hands: Hands) {
    this.#folder = folder
    this.#hands = hands
  }

  /** Opens the collection asked for, else the one open last, else the demonstration. Answers why not, or null. */
  openFirst(asked: string | null): Promise<Problem | null> {
    return this.#turns.alone(async () => {
      try {
        const file = asked ?? lastOpen(this.#folder)
        if (file === null) await this.#openDemo()
        else await this.#swapTo(await this.#hands.open(file, 'write'))
        this.#whyNone = null
      } catch (thrown) {
        this.#whyNone = problemOf(thrown)
      }
      return this.#whyNone
    })
  }

  run<N extends OperationName>(name: N, input: ParsedInput<N>): Promise<unknown> {
    if (name === 'collection.start') {
      return this.#turns.alone(() => this.#start(input as ParsedInput<'collection.start'>))
    }
    if (name === 'collection.open-demo') {
      return this.#turns.alone(() => this.#answerDemo())
    }
    const service: ServiceName = name
    const work = async () => this.#hands.run(this.#ready(), service, input as ParsedInput<ServiceName>)
    return contract[name].access === 'reads' ? this.#turns.shared(work) : this.#turns.alone(work)
  }

  /** Closes the collection once all work before has ended. */
  close(): Promise<void> {
    return this.#turns.alone(async () => {
      this.#open?.close()
      this.#open = null
    })
  }

  #ready(): OpenCollection {
    if (this.#open !== null) return this.#open
    throw new Refusal(this.#whyNone ?? problemOf(null))
  }

  async #start(input: ParsedInput<'collection.start'>): Promise<Value<'collection.start'>> {
    const { key, ...asked } = input
    const text = JSON.stringify(asked)
    if (this.#begun?.key === key) {
      if (this.#begun.input === text) return this.#begun.value
      throw new Refusal(keyUsedOtherwise())
    }
    const { collection, value } = await this.#hands.begin(freeFile(this.#folder, input.libraryName), input)
    await this.#swapTo(collection)
    this.#begun = { key, input: text, value }
    return value
  }

  async #answerDemo(): Promise<Value<'collection.open-demo'>> {
    if (this.#open?.file !== demoFile(this.#folder)) await this.#openDemo()
    return sayDemoOpened(this.#ready(), this.#hands)
  }

  async #openDemo(): Promise<void> {
    const file = demoFile(this.#folder)
    let demo: OpenCollection
    try {
      demo = await this.#hands.open(file, 'write')
    } catch (thrown) {
      if (problemOf(thrown).code !== 'not-found') throw thrown
      await makeDemoAt(file, this.#hands)
      demo = await this.#hands.open(file, 'write')
    }
    await this.#swapTo(demo)
  }

  async #swapTo(next: OpenCollection): Promise<void> {
    const before = this.#open
    this.#open = next
    this.#whyNone = null
    before?.close()
    rememberOpen(this.#folder, next.file)
  }
}

function keyUsedOtherwise(): Problem {
  return {
    code: 'key-used-otherwise',
    sentence: 'This request was already used to start a collection with other details. Nothing was done.',
    field: 'key',
    todo: 'Ask again with a new key.',
    choices: [],
  }
}
