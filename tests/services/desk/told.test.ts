import { expect, test } from 'vitest'
import { noteAnswer, toldOf } from '../../../main/services/desk/told.ts'
import { makeDesk } from '../makeDesk.ts'

const save = (...tables: string[]) => ({ number: 7, tables: new Set(tables) })

test('A save makes old what was read from its tables, and whatever is still being answered', async () => {
  const { store } = await makeDesk()
  expect(toldOf(store, save('Bay'))).toEqual({ save: 7, paths: [] })
  await noteAnswer(store, 'bays.list', () => store.read.bay.findMany())
  await noteAnswer(store, 'customers.find', () => store.read.customer.findMany())
  expect(toldOf(store, save('Bay'))).toEqual({ save: 7, paths: ['bays.list'] })
  expect(toldOf(store, save('Vehicle')).paths).toEqual([])
  await noteAnswer(store, 'jobs.get', async () => {
    expect(toldOf(store, save('Vehicle')).paths).toEqual(['jobs.get'])
  })
  expect(toldOf(store, save('Vehicle')).paths).toEqual([])
})

test('An answer that failed is under way no more, and of a save nobody knows more anything may be old', async () => {
  const { store } = await makeDesk()
  await expect(noteAnswer(store, 'jobs.get', () => Promise.reject(new Error('no')))).rejects.toThrow('no')
  expect(toldOf(store, save('Vehicle')).paths).toEqual([])
  expect(toldOf(store, { number: 8, tables: null })).toEqual({ save: 8, paths: null })
})
