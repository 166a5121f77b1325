import { expect, it } from 'vitest'
import { Refusal } from '../../../main/domain/refusal.ts'
import { besideDesk, endBeside } from '../../../main/services/desk/beside.ts'
import { makeDesk } from '../makeDesk.ts'

const failedWords = () => 'It went wrong.'

it('goes on beside the desk, is joined while it does, and keeps what came of it', async () => {
  const { store } = await makeDesk()
  const counting = besideDesk<string>(failedWords)
  expect(counting.stands(store)).toEqual({ working: null, result: null, failed: null })
  let runs = 0
  const run = async (pace: { done: number; total: number; turn(): Promise<boolean> }) => {
    runs++
    pace.total = 3
    for (; pace.done < 3; pace.done++) await pace.turn()
    return 'three'
  }
  counting.begin(store, run)
  counting.begin(store, run)
  expect(counting.stands(store)).toEqual({ working: { done: 0, total: 0 }, result: null, failed: null })
  await counting.ends(store)
  expect(counting.stands(store)).toEqual({ working: null, result: 'three', failed: null })
  expect(runs).toBe(1)
})

it('ends where it is when asked, by a person or as the database is closed', async () => {
  const { store } = await makeDesk()
  const endless = besideDesk<number>(failedWords)
  for (const end of [() => endless.stop(store), () => endBeside(store)]) {
    endless.begin(store, async pace => {
      while (await pace.turn()) pace.done++
      return pace.done
    })
    await new Promise(resolve => setImmediate(resolve))
    await end()
    expect(endless.stands(store)).toMatchObject({ working: null, failed: null })
    expect(endless.stands(store).result).not.toBeNull()
  }
})

it('says in words why it failed: a refusal in its own', async () => {
  const { store } = await makeDesk()
  const failing = besideDesk<void>(failedWords)
  for (const [error, words] of [
    [new Refusal('none', 'car', 'x', 'There is no car.'), 'There is no car.'],
    [new Error('a fault'), 'It went wrong.'],
  ] as const) {
    failing.begin(store, () => Promise.reject(error))
    await failing.ends(store)
    expect(failing.stands(store)).toEqual({ working: null, result: null, failed: words })
  }
})
