import { expect, it } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import type { ServiceName } from '../../db/services/run-operation.ts'
import { takeInOn } from '../builders/earlier-gift.ts'
import { aCollection } from '../builders/temporary-collection.ts'

/** A day on which nothing else in the book happens. */
const BY = { day: '2026-02-27', told: '27 Feb 2026' }

/** Files and papers, which have tests of their own, and the plan, which takes its time. */
const ELSEWHERE = /export|print|render|workbook|^season-plan/

it('says ‘overdue’ and the day in no answer to anything that can be asked, where the library wants no due dates', async () => {
  const test = await aCollection()
  try {
    await test.call('settings.change', { settings: { dueDates: true } })
    const { lotId, accessionId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
    const { personId } = await test.call('person.create', { name: 'Maren Holt' })
    const { withdrawalId } = await test.call('withdrawal.record', {
      person: { personId },
      on: '2026-01-10',
      purpose: 'to-return',
      lines: [{ lotId, amount: '20 seeds' }],
      promised: 'a jar',
      promisedBy: BY.day,
      slip: true,
    })
    const inputs = [{}, { personId }, { lotId }, { accessionId }, { withdrawalId }, { parentLotId: lotId }]
    const reads = Object.entries(contract)
      .filter(([name, { access }]) => access === 'reads' && !ELSEWHERE.test(name))
      .map(([name]) => name as ServiceName)
    const told = async () => {
      const answers = []
      for (const name of reads) {
        for (const input of inputs.filter((one) => contract[name].input.safeParse(one).success))
          answers.push([name, JSON.stringify(await test.call(name, input as never).catch(() => null))])
      }
      expect(answers.length).toBeGreaterThan(40)
      return answers
        .filter(
          ([, text]) =>
            /overdue":[1-9]|overdue(?!":)/i.test(text ?? '') ||
            [BY.day, BY.told].some((day) => text?.includes(day)),
        )
        .map(([name]) => name)
    }
    expect(await told()).toEqual(
      expect.arrayContaining(['promise.list', 'withdrawal.list-open', 'person.get']),
    )
    await test.call('settings.change', { settings: { dueDates: false } })
    expect(await told()).toEqual([])
  } finally {
    test.remove()
  }
})
