import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { contract, type Value } from '../../db/contract/contract.ts'
import type { Problem } from '../../db/contract/problem.ts'
import { Refusal } from '../../db/contract/refusal.ts'
import { message } from '../../db/messages/message.ts'
import { answerCall, type Runner } from '../../electron/host/answer-call.ts'
import type { CollectionBackend } from '../../electron/host/collection-backend.ts'
import { CollectionHolder } from '../../electron/host/collection-holder.ts'
import { demoFile, lastOpen } from '../../electron/host/collections-folder.ts'
import { logFile } from '../../electron/host/log.ts'
import { problemOf, traceOf } from '../../electron/host/problem-of.ts'
import { ReadWriteLock } from '../../electron/host/read-write-lock.ts'
import { HostStopped, startHost } from '../../electron/host/start-host.ts'
import { inEnglish } from '../builders/in-english.ts'
import { testBackend } from './support/ways-in.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-host-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const coded = (code: string) => Object.assign(new Error('Ilka Brandt, 3 Ferry Lane'), { code })
const throwing = (thrown: unknown): Runner => ({
  run: async () => {
    throw thrown
  },
  speech: () => null,
})

describe('a call', () => {
  const sentenceFor = async (name: string, raw: unknown) => {
    const answer = await answerCall(throwing(new Error('must not run')), name, raw, () => {})
    return answer.ok ? null : [answer.problem.sentence, answer.problem.field]
  }

  test.each([
    ['lot.get', {}, '‘lot id’ is missing.', 'lotId'],
    ['lot.get', { lotId: 'a' }, '‘lot id’ must be a number.', 'lotId'],
    ['lot.get', { lotId: 0 }, '‘lot id’ must be at least 1.', 'lotId'],
    ['lot.get', { lotId: 1, colour: 2 }, '‘colour’ is not a field the app knows.', 'colour'],
    ['lot.get', null, 'The request must be a group of fields.', null],
    ['place.create', { key: 'abcdefgh', name: ' ', kind: 'jar' }, 'Type something here.', 'name'],
    ['place.create', { key: 'short', name: 'Jar', kind: 'jar' }, contractKeySentence(), 'key'],
    ['return.record', withPerson({ newPerson: { nam: 'x' } }), '‘name’ is missing.', 'person.newPerson.name'],
    ['return.record', withPerson(7), '‘person’ fits none of the forms it may have.', 'person'],
  ])('%s with %j says %j', async (name, raw, sentence, field) => {
    expect(await sentenceFor(name, raw)).toEqual([sentence, field])
  })

  test('whose choice is not among those known lists them', async () => {
    const answer = await answerCall(throwing(null), 'lot.list', { sort: 'size' }, () => {})
    expect(answer).toMatchObject({
      problem: { choices: ['number', 'variety', 'crop', 'harvest', 'count', 'place'] },
    })
  })

  test('never gives away what was thrown, nor logs what was typed', async () => {
    const logged: string[] = []
    const log = (line: string) => logged.push(line)
    const unexpected = new TypeError('Ilka Brandt, 3 Ferry Lane', { cause: coded('EODD') })
    const answer = await answerCall(throwing(unexpected), 'lot.get', { lotId: 1 }, log)
    expect(answer).toMatchObject({ ok: false, problem: { code: 'unexpected' } })
    expect(JSON.stringify(answer)).not.toMatch(/Ilka|TypeError|host\.test|\bat /)
    expect(logged).toHaveLength(1)
    expect(logged[0]).toMatch(/^lot\.get TypeError at .*host\.test\.ts.* because of Error EODD/)
    expect(logged[0]).not.toContain('Ilka')
  })

  test('that a service refuses is answered with its problem', async () => {
    const problem = {
      code: 'not-enough-seed',
      sentence: 'Only 12.',
      field: 'a',
      todo: null,
      choices: ['12 seeds'],
    } as const
    const answer = await answerCall(
      throwing(new Refusal({ ...problem, choices: ['12 seeds'] })),
      'lot.get',
      { lotId: 1 },
      () => {},
    )
    expect(answer).toEqual({ ok: false, problem })
  })

  function contractKeySentence(): string {
    return 'A request key has 8 to 64 letters, digits, hyphens or underscores.'
  }
  function withPerson(person: unknown): object {
    return { key: 'abcdefgh', person, parentLotId: 1, receivedOn: '2026-03-14', amount: '3 g' }
  }
})

describe('what SQLite and the disk say becomes', () => {
  test.each([
    ['SQLITE_BUSY', 'collection-busy'],
    ['SQLITE_BUSY_SNAPSHOT', 'collection-busy'],
    ['SQLITE_FULL', 'disk-full'],
    ['ENOSPC', 'disk-full'],
    ['SQLITE_READONLY', 'collection-read-only'],
    ['SQLITE_READONLY_DBMOVED', 'file-moved'],
    ['SQLITE_IOERR_FSYNC', 'disk-fails'],
    ['EIO', 'disk-fails'],
    ['EROFS', 'collection-read-only'],
    ['SQLITE_CORRUPT', 'file-damaged'],
    ['SQLITE_NOTADB', 'file-damaged'],
    ['SQLITE_CANTOPEN', 'not-found'],
    ['SQLITE_CONSTRAINT_CHECK', 'unexpected'],
  ])('%s: %s', (code, expected) => {
    const problem = inEnglish<Problem>(problemOf(coded(code)))
    expect(problem.code).toBe(expected)
    expect(problem.todo).not.toBeNull()
    expect(problem.sentence).not.toMatch(/error|SQLITE/i)
    expect(problemOf(new Error('wrapped', { cause: coded(code) })).code).toBe(expected)
  })

  test('something that is no error at all is still answered', () => {
    expect(problemOf('thrown text').code).toBe('unexpected')
    expect(traceOf('thrown text')).toBe('string')
  })
})

describe('turns', () => {
  test('reads run side by side, a write alone, and nobody overtakes it', async () => {
    const turns = new ReadWriteLock()
    const seen: string[] = []
    const work = (name: string, ms: number) => async () => {
      seen.push(`${name} begins`)
      await new Promise((resolve) => setTimeout(resolve, ms))
      seen.push(`${name} ends`)
    }
    await Promise.all([
      turns.shared(work('read 1', 30)),
      turns.shared(work('read 2', 10)),
      turns.alone(work('write', 10)),
      turns.shared(work('read 3', 1)),
      turns.alone(work('write 2', 1)),
    ])
    expect(seen).toEqual([
      'read 1 begins',
      'read 2 begins',
      'read 2 ends',
      'read 1 ends',
      'write begins',
      'write ends',
      'read 3 begins',
      'read 3 ends',
      'write 2 begins',
      'write 2 ends',
    ])
  })

  test('work that fails holds nobody up', async () => {
    const turns = new ReadWriteLock()
    await expect(turns.alone(() => Promise.reject(new Error('once')))).rejects.toThrow('once')
    await expect(turns.shared(() => Promise.reject(new Error('twice')))).rejects.toThrow('twice')
    expect(await turns.alone(async () => 'on')).toBe('on')
  })
})

describe('the holder', () => {
  const input = (name: 'collection.create', more: object) =>
    contract[name].input.parse({ key: 'first-key', ...more })

  test('opens the demonstration first, and next time what was open last', async () => {
    const first = new CollectionHolder(folder, testBackend)
    expect(await first.openFirst(null)).toBeNull()
    expect(await first.run('collection.get', {})).toMatchObject({ file: demoFile(folder) })
    await first.run('collection.create', input('collection.create', { libraryName: 'Hollow Lane' }))
    await first.close()
    const second = new CollectionHolder(folder, testBackend)
    await second.openFirst(null)
    expect(await second.run('collection.get', {})).toMatchObject({
      file: join(folder, 'Hollow Lane.drawer'),
      settings: { libraryName: 'Hollow Lane' },
    })
    await second.close()
  })

  test('goes back to the keeper’s own after a look at the demonstration', async () => {
    const first = new CollectionHolder(folder, testBackend)
    await first.openFirst(null)
    await first.run('collection.create', input('collection.create', { libraryName: 'Hollow Lane' }))
    await first.run(
      'collection.open-demo',
      contract['collection.open-demo'].input.parse({ key: 'a-look-aside' }),
    )
    expect(await first.run('collection.get', {})).toMatchObject({ file: demoFile(folder) })
    await first.close()
    const second = new CollectionHolder(folder, testBackend)
    await second.openFirst(null)
    expect(await second.run('collection.get', {})).toMatchObject({
      file: join(folder, 'Hollow Lane.drawer'),
    })
    await second.close()
  })

  test('starts one collection for one key', async () => {
    const holder = new CollectionHolder(folder, testBackend)
    await holder.openFirst(null)
    const asked = input('collection.create', { libraryName: 'Hollow Lane' })
    const [one, two] = await Promise.all([
      holder.run('collection.create', asked),
      holder.run('collection.create', asked),
    ])
    expect(two).toEqual(one)
    expect(existsSync(join(folder, 'Hollow Lane 2.drawer'))).toBe(false)
    await expect(holder.run('collection.create', { ...asked, libraryName: 'Other' })).rejects.toThrow(Refusal)
    await holder.close()
  })

  test('keeps the open collection where another cannot be started', async () => {
    const holder = new CollectionHolder(folder, testBackend)
    await holder.openFirst(null)
    const bad = input('collection.create', { libraryName: 'Spoilt', accessionPattern: '{####}' })
    await expect(holder.run('collection.create', bad)).rejects.toMatchObject({
      problem: { code: 'pattern-unfit', field: 'accessionPattern' },
    })
    expect(existsSync(join(folder, 'Spoilt.drawer'))).toBe(false)
    expect(await holder.run('collection.get', {})).toMatchObject({ file: demoFile(folder) })
    await holder.close()
  })

  test('answers every call with the reason where nothing could be opened, and still starts another', async () => {
    writeFileSync(join(folder, 'letter.drawer'), 'Dear Ilka, this is no collection.'.repeat(200))
    const holder = new CollectionHolder(folder, testBackend)
    expect(await holder.openFirst(join(folder, 'letter.drawer'))).toMatchObject({ code: 'not-a-collection' })
    await expect(holder.run('collection.get', {})).rejects.toMatchObject({
      problem: { code: 'not-a-collection' },
    })
    await holder.run('collection.create', input('collection.create', { libraryName: 'Afresh' }))
    expect(await holder.run('collection.get', {})).toMatchObject({ file: join(folder, 'Afresh.drawer') })
    expect(readFileSync(join(folder, 'letter.drawer'), 'utf8')).toContain('Dear Ilka')
    await holder.close()
  })

  test('says that a collection is open in another program, and leaves it alone', {
    tags: 'long',
  }, async () => {
    const first = new CollectionHolder(folder, testBackend)
    await first.openFirst(null)
    const second = new CollectionHolder(folder, testBackend)
    expect(await second.openFirst(null)).toMatchObject({ code: 'collection-busy' })
    await first.close()
  })

  test('on a full disk is read, says why nothing is kept, and refuses what is to be written', async () => {
    const first = new CollectionHolder(folder, testBackend)
    await first.openFirst(null)
    await first.close()
    const full: CollectionBackend = {
      ...testBackend,
      open: async (file, access) => {
        if (access === 'write') throw coded('SQLITE_FULL')
        return testBackend.open(file, access)
      },
    }
    const holder = new CollectionHolder(folder, full)
    expect(await holder.openFirst(demoFile(folder))).toBeNull()
    const about = inEnglish(await holder.run('collection.get', {})) as Value<'collection.get'>
    expect(about.warnings.join()).toContain('The disk is full')
    const person = { key: 'one-intention', name: 'Ilka', town: '' }
    await expect(holder.run('person.create', person as never)).rejects.toMatchObject({
      problem: { code: 'collection-read-only', todo: message('file.only-read-todo') },
    })
    await holder.close()
  })

  test('a demonstration that could not be finished leaves nothing behind', async () => {
    const clumsy: CollectionBackend = {
      ...testBackend,
      makeDemo: async (file) => {
        writeFileSync(file, 'half')
        throw coded('SQLITE_FULL')
      },
    }
    const holder = new CollectionHolder(folder, clumsy)
    expect(await holder.openFirst(null)).toMatchObject({ code: 'disk-full' })
    expect(existsSync(demoFile(folder))).toBe(false)
  })
})

describe('the log', () => {
  test('takes lines, and is set aside when it is full', () => {
    const log = logFile(join(folder, 'not', 'there', 'yet'), () => new Date(0))
    log('lot.get TypeError')
    const file = join(folder, 'not', 'there', 'yet', 'common-drawer.log')
    expect(readFileSync(file, 'utf8')).toBe('1970-01-01T00:00:00.000Z lot.get TypeError\n')
    writeFileSync(file, 'x'.repeat(1_000_001))
    log('again')
    expect(readFileSync(file, 'utf8')).toContain('again')
    expect(existsSync(`${file}.before`)).toBe(true)
  })
})

describe('the thread', () => {
  const threadThat = (code: string) => {
    mkdirSync(join(folder, 'thread'), { recursive: true })
    const file = join(folder, 'thread', 'worker.mjs')
    writeFileSync(file, `import { parentPort } from 'node:worker_threads'\n${code}`)
    return startHost({ folder, file: null }, pathToFileURL(file))
  }

  test('that breaks leaves the call unanswered, and the next call starts it afresh', async () => {
    const host = threadThat(`
      parentPort.postMessage({ kind: 'opened', problem: null })
      parentPort.on('message', ({ kind, id, name }) => {
        if (kind === 'close') return parentPort.close()
        if (name === 'break') process.exit(3)
        parentPort.postMessage({ kind: 'answer', id, answer: { ok: true, value: name } })
      })`)
    expect(await host.opened).toBeNull()
    expect(await host.call('one', {})).toEqual({ ok: true, value: 'one' })
    await expect(Promise.all([host.call('break', {}), host.call('two', {})])).rejects.toThrow(HostStopped)
    expect(await host.call('three', {})).toEqual({ ok: true, value: 'three' })
    await host.close()
    await expect(host.call('four', {})).rejects.toThrow(HostStopped)
  })

  test('of the real app opens, answers and closes', async () => {
    const { collection } = await testBackend.begin(join(folder, 'a.drawer'), {
      key: 'first-key',
      libraryName: 'Hollow Lane',
    })
    collection.close()
    const host = startHost({ folder, file: join(folder, 'a.drawer') })
    expect(await host.opened).toBeNull()
    expect(await host.call('collection.check', {})).toMatchObject({ ok: true, value: { clean: true } })
    expect(await host.call('collection.check', { more: 1 })).toMatchObject({ ok: false })
    await host.close()
    expect(lastOpen(folder)).toBe(join(folder, 'a.drawer'))
  })
})
