import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import { contract, type OperationName, type ParsedInput } from '../../db/contract/contract.ts'
import type { LibrarySpeech } from '../../db/messages/texts-of.ts'
import type { Runner } from '../host/answer-call.ts'
import type { CollectionBackend } from '../host/collection-backend.ts'
import { restoredFile } from '../host/collections-folder.ts'
import { makeDemoAt, sayDemoOpened } from '../host/demo.ts'

/**
 * Runs one operation on the collection in one file, opened for as long as it takes.
 *
 * Reads take no lock, so they work while the app has the collection open. The operations that change which collection
 * is open make that file, where it is missing.
 */
export class OneCollection implements Runner {
  readonly #file: string
  readonly #backend: CollectionBackend
  #speech: LibrarySpeech | null = null

  constructor(file: string, backend: CollectionBackend) {
    this.#file = file
    this.#backend = backend
  }

  speech(): LibrarySpeech | null {
    return this.#speech
  }

  async run<N extends OperationName>(name: N, input: ParsedInput<N>): Promise<unknown> {
    if (name === 'collection.create') {
      const { collection, value } = await this.#backend.begin(
        this.#file,
        input as ParsedInput<'collection.create'>,
      )
      collection.close()
      return value
    }
    if (name === 'collection.open-demo') return this.#openDemo()
    if (name === 'backup.list') return this.#listBackups()
    if (name === 'backup.restore') {
      const target = restoredFile(this.#file, new Date())
      const { collection, value } = await this.#backend.restore(
        input as ParsedInput<'backup.restore'>,
        target,
      )
      collection.close()
      return value
    }
    const access = contract[name].access === 'reads' ? 'read' : 'write'
    const collection = await this.#backend.open(this.#file, access)
    this.#speech = this.#backend.speech(collection)
    try {
      return await this.#backend.run(collection, name, input as never)
    } finally {
      collection.close()
    }
  }

  /** The backups beside the file, which may be damaged: then only those in its own folder are known of. */
  async #listBackups(): Promise<unknown> {
    const open = await this.#backend.open(this.#file, 'read').catch(() => null)
    try {
      return this.#backend.listBackups(resolve(this.#file), open, null)
    } finally {
      open?.close()
    }
  }

  async #openDemo(): Promise<unknown> {
    if (!existsSync(this.#file)) await makeDemoAt(this.#file, this.#backend)
    const demo = await this.#backend.open(this.#file, 'read')
    try {
      return await sayDemoOpened(demo, this.#backend)
    } finally {
      demo.close()
    }
  }
}
