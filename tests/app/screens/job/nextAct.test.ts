import { expect, test } from 'vitest'
import { nextAct, nowWords } from '../../../../app/screens/job/nextAct.ts'
import type { JobStepView, JobView } from '../../../../main/api/views.ts'

const can = { confirm: false, arrive: false, handOver: false } as JobView['can']
const step = (change: object) =>
  ({
    kind: 'work',
    state: 'planned',
    name: 'Wash',
    startAt: 100,
    endAt: 200,
    crew: [],
    cure: null,
    can: { start: false, finish: false, reopen: false },
    ...change,
  }) as unknown as JobStepView
const here = { ...can, handOver: true }

test('a held place is confirmed, a booked car comes in, and one that is over asks for nothing', () => {
  const steps = [step({})]
  expect(nextAct({ can: { ...can, confirm: true }, steps, nowAt: 0 })).toEqual({ kind: 'confirm' })
  expect(nextAct({ can: { ...can, arrive: true }, steps, nowAt: 0 })).toEqual({ kind: 'arrive' })
  expect(nextAct({ can, steps, nowAt: 0 })).toBeNull()
})

test('what runs is finished before anything else starts, and a car whose work is done goes home', () => {
  const running = step({ state: 'running', can: { finish: true, start: false } })
  const next = step({ name: 'Polish', can: { start: true, finish: false } })
  expect(nextAct({ can: here, steps: [running, next], nowAt: 0 })).toMatchObject({
    kind: 'finish',
    step: running,
  })
  expect(nextAct({ can: here, steps: [step({ state: 'done' }), next], nowAt: 0 })).toMatchObject({
    kind: 'start',
    step: next,
  })
  expect(nextAct({ can: here, steps: [step({ state: 'done' })], nowAt: 0 })).toEqual({ kind: 'handOver' })
})

test('while a cure holds the next step, its time is named, never one that is over', () => {
  const steps = [step({ kind: 'hold', state: 'running' }), step({ name: 'Topper', startAt: 300 })]
  expect(nextAct({ can: here, steps, nowAt: 0 })).toMatchObject({ kind: 'wait', from: 300 })
  expect(nextAct({ can: here, steps, nowAt: 400 })).toMatchObject({ kind: 'wait', from: 400 })
})

test('now and after are one sentence each', () => {
  const job = (change: object) =>
    ({
      nowAt: 50,
      arrivedAt: 0,
      leftAt: null,
      dropOffAt: 0,
      handoverAt: 900,
      steps: [],
      ...change,
    }) as unknown as JobView
  const words = (change: object) => nowWords(job(change), at => `at ${at}`)
  expect(words({ arrivedAt: null, dropOffAt: 80, steps: [step({})] })).toEqual({
    now: 'Comes in at 80.',
    after: 'Then: Wash from at 100, home from at 900.',
  })
  const cure = { tackFreeAt: 120 }
  const hold = step({ kind: 'hold', state: 'running', name: 'Cure', endAt: 300, cure })
  expect(words({ steps: [hold] }).now).toBe('Cure: nobody touches it before at 120.')
  expect(words({ nowAt: 130, steps: [hold] }).now).toBe('Cure until at 300.')
  expect(words({ steps: [step({ state: 'running', crew: [{ name: 'Jo' }] })] }).now).toBe(
    'Wash, Jo, until at 200.',
  )
  expect(words({ steps: [] }).now).toBe('All work is done.')
  // Only of a car that is here something is so now.
  expect(words({ steps: [] }).lead).toBe('Now')
  expect(words({ leftAt: 40 }).lead).toBeUndefined()
  expect(words({ leftAt: 40 }).now).toBe('Went home at 40.')
})
