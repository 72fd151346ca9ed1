import { resolve } from 'node:path'
import { contract, type OperationName, type ParsedInput, type Result } from '../../db/contract/contract.ts'
import type { ProblemCode, UntoldProblem } from '../../db/contract/problem.ts'
import { Refusal, refuse } from '../../db/contract/refusal.ts'
import { message } from '../../db/messages/message.ts'
import type { LibrarySpeech } from '../../db/messages/texts-of.ts'
import type { OpenCollection } from '../../db/migrations/open-file.ts'
import { BACKED_UP_FIRST, type ServiceName } from '../../db/services/run-operation.ts'
import type { Runner } from './answer-call.ts'
import type { CollectionBackend } from './collection-backend.ts'
import { demoFile, freeFile, lastOpen, rememberOpen, restoredFile } from './collections-folder.ts'
import { makeDemoAt, sayDemoOpened } from './demo.ts'
import { problemOf } from './problem-of.ts'
import { ReadWriteLock } from './read-write-lock.ts'

/** What keeps a collection from being written, but not from being read. */
const OPEN_FOR_READING: ReadonlySet<ProblemCode> = new Set(['collection-read-only', 'disk-full'])

/**
 * Holds the one collection that is open, and changes which one it is.
 *
 * Where no collection could be opened, every call is refused with the reason, but for those that open another; asked
 * what is open, it tries again.
 */
export class CollectionHolder implements Runner {
  readonly #folder: string
  readonly #backend: CollectionBackend
  readonly #lock = new ReadWriteLock()
  #open: OpenCollection | null = null
  #whyNone: UntoldProblem | null = null
  /** The file that could not be opened. */
  #failed: string | null = null
  /** When opening was last tried, milliseconds of this process. */
  #triedAt = 0
  /** Why the last backup made by itself failed. */
  #backupTrouble: UntoldProblem['sentence'] | null = null
  /** A collection that was opened but could not be remembered yet. */
  #toRemember: string | null = null
  #closing = false
  #begun: {
    readonly key: string
    readonly input: string
    readonly value: Result<'collection.create' | 'backup.restore'>
  } | null = null

  constructor(folder: string, backend: CollectionBackend) {
    this.#folder = folder
    this.#backend = backend
  }

  speech(): LibrarySpeech | null {
    return this.#open === null ? null : this.#backend.speech(this.#open)
  }

  /** Opens the collection asked for, else the one open last, else the demonstration. Answers why not, or null. */
  openFirst(asked: string | null): Promise<UntoldProblem | null> {
    return this.#lock.alone(() => this.#tryToOpen(asked ?? lastOpen(this.#folder)))
  }

  async #tryToOpen(file: string | null): Promise<UntoldProblem | null> {
    try {
      if (file === null) await this.#openDemo()
      else await this.#swapTo(await this.#openAsFarAsMay(file))
    } catch (thrown) {
      this.#whyNone = problemOf(thrown)
      this.#failed = file === null ? null : resolve(file)
      this.#triedAt = performance.now()
    }
    return this.#whyNone
  }

  /** Opens for writing, or for reading alone where nothing may be written. */
  async #openAsFarAsMay(file: string): Promise<OpenCollection> {
    try {
      return await this.#backend.open(file, 'write')
    } catch (thrown) {
      const whyReadOnly = problemOf(thrown)
      if (!OPEN_FOR_READING.has(whyReadOnly.code)) throw thrown
      return { ...(await this.#backend.open(file, 'read')), whyReadOnly }
    }
  }

  /**
   * Tries once more what could not be opened: the file may be back, its other window closed, the disk free.
   *
   * Whoever asked before the last try ended shares its answer.
   */
  async #openAgain(askedAt: number): Promise<void> {
    if (this.#whyNone !== null && this.#triedAt < askedAt && !this.#closing)
      await this.#tryToOpen(this.#failed)
  }

  /** Runs an operation, or refuses it with why none is open. */
  run<N extends OperationName>(name: N, input: ParsedInput<N>): Promise<unknown> {
    if (name === 'collection.create') {
      return this.#lock.alone(() => this.#start(input as ParsedInput<'collection.create'>))
    }
    if (name === 'collection.open-demo') {
      return this.#lock.alone(() => this.#answerDemo())
    }
    if (name === 'backup.list') return this.#lock.shared(async () => this.#listBackups())
    if (name === 'backup.restore') {
      return this.#lock.alone(() => this.#restore(input as ParsedInput<'backup.restore'>))
    }
    if (name === 'backup.create')
      return this.#aside(async () =>
        this.#backend.run(this.#ready(), name, input as ParsedInput<'backup.create'>),
      )
    if (name === 'collection.get' && this.#whyNone !== null) {
      const askedAt = performance.now()
      return this.#lock.alone(() => this.#openAgain(askedAt)).then(() => this.#serve(name, input))
    }
    if (BACKED_UP_FIRST.has(name)) return this.#backedUp().then(() => this.#serve(name, input))
    return this.#serve(name, input)
  }

  #serve<N extends ServiceName>(name: N, input: ParsedInput<OperationName>): Promise<unknown> {
    const work = async () => this.#backend.run(this.#ready(), name, input as ParsedInput<N>)
    return contract[name].access === 'reads' ? this.#lock.shared(work) : this.#lock.alone(work)
  }

  /** Backs the open collection up, where something was written since; a failure is told with the list of backups. */
  backUpByItself(): Promise<void> {
    return this.#aside(async () => {
      if (this.#open === null || this.#closing) return
      try {
        await this.#backend.backUpIfWritten(this.#open, 'at start')
        this.#backupTrouble = null
      } catch (thrown) {
        if (!this.#closing) this.#backupTrouble = problemOf(thrown).sentence
        throw thrown
      }
    })
  }

  /** Backs up before a write of many rows, so that the write itself need not wait for it and nobody with it. */
  #backedUp(): Promise<void> {
    return this.#aside(async () => this.#backend.backUpIfWritten(this.#ready(), 'before import'))
  }

  /** Begins in turn what goes on in a thread of its own: whoever comes later does not wait for its end. */
  async #aside<T>(begin: () => Promise<T>): Promise<T> {
    const { ended } = await this.#lock.shared(async () => ({ ended: begin() }))
    return ended
  }

  /** Computes some of what screens will ask of the whole collection, and tells how much is left. */
  warmCaches(): Promise<number> {
    return this.#lock.shared(async () => (this.#open === null ? 0 : this.#backend.warmCaches(this.#open)))
  }

  /** Closes the collection once all work before has ended; a backup under way is given up. */
  async close(): Promise<void> {
    this.#closing = true
    await this.#lock.alone(async () => {
      this.#open?.close()
      this.#open = null
      if (this.#toRemember !== null) await this.#remember(this.#toRemember)
    })
    await this.#backend.stopBackups()
  }

  #ready(): OpenCollection {
    if (this.#open !== null) return this.#open
    return this.#refuse()
  }

  #listBackups(): Result<'backup.list'> {
    const file = this.#open?.file ?? this.#failed
    return file === null ? this.#refuse() : this.#backend.listBackups(file, this.#open, this.#backupTrouble)
  }

  #refuse(): never {
    throw new Refusal(this.#whyNone ?? problemOf(null))
  }

  /** Does once what a key asks for; asked again it gives the same answer. */
  async #once<V extends Result<'collection.create' | 'backup.restore'>>(
    { key, ...asked }: { readonly key: string },
    work: () => Promise<{ readonly collection: OpenCollection; readonly value: V }>,
  ): Promise<V> {
    const text = JSON.stringify(asked)
    if (this.#begun?.key === key) {
      if (this.#begun.input === text) return this.#begun.value as V
      refuse('key-used-otherwise', message('problem.key-used-otherwise'), {
        field: 'key',
        todo: message('problem.key-used-otherwise-todo'),
      })
    }
    const { collection, value } = await work()
    await this.#swapTo(collection)
    this.#begun = { key, input: text, value }
    return value
  }

  #restore(input: ParsedInput<'backup.restore'>): Promise<Result<'backup.restore'>> {
    const beside = this.#open?.file ?? this.#failed ?? demoFile(this.#folder)
    return this.#once(input, () => this.#backend.restore(input, restoredFile(beside, new Date())))
  }

  #start(input: ParsedInput<'collection.create'>): Promise<Result<'collection.create'>> {
    return this.#once(input, () => this.#backend.begin(freeFile(this.#folder, input.libraryName), input))
  }

  async #answerDemo(): Promise<Result<'collection.open-demo'>> {
    if (this.#open?.file !== demoFile(this.#folder)) await this.#openDemo()
    return sayDemoOpened(this.#ready(), this.#backend)
  }

  async #openDemo(): Promise<void> {
    const file = demoFile(this.#folder)
    let demo: OpenCollection
    try {
      demo = await this.#backend.open(file, 'write')
    } catch (thrown) {
      if (problemOf(thrown).code !== 'not-found') throw thrown
      await makeDemoAt(file, this.#backend)
      demo = await this.#backend.open(file, 'write')
    }
    await this.#swapTo(demo)
  }

  async #swapTo(next: OpenCollection): Promise<void> {
    const before = this.#open
    this.#open = next
    this.#whyNone = null
    before?.close()
    // The demonstration is a look aside: the next start goes back to the keeper's own.
    if (next.file !== demoFile(this.#folder)) await this.#remember(next.file)
  }

  /** What is open stays open, though the next start may have to look for it. */
  async #remember(file: string): Promise<void> {
    try {
      await rememberOpen(this.#folder, file)
      this.#toRemember = null
    } catch {
      this.#toRemember = file
    }
  }
}
