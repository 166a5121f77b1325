import { expect, test } from 'vitest'
import { addedWords, addedWork, missedOf, type WaitingStep } from '../../../main/domain/job/index.ts'

const step = (name: string, change: Partial<WaitingStep> = {}): WaitingStep => ({
  kind: 'work',
  name,
  stage: 'wipe',
  minutes: 30,
  productId: 'wipe',
  actualStartAt: null,
  actualEndAt: null,
  missed: null,
  missedMin: null,
  missedReason: null,
  ...change,
})
const done = { actualStartAt: 0, actualEndAt: 30 }
const wiped = step('Wipe', { ...done, missed: 'again' })

test('A miss is there once the work that waited is done, until the late step is begun or somebody says why not', () => {
  expect(missedOf([wiped, step('Coat')], [1])).toEqual({ late: 1, kept: 0, work: 'again' })
  expect(missedOf([wiped, step('Coat')], [])).toBeNull()
  expect(missedOf([step('Wipe', { missed: 'again' }), step('Coat')], [1])).toBeNull()
  expect(missedOf([step('Wipe', done), step('Coat')], [1])).toBeNull()
  expect(missedOf([wiped, step('Coat', { actualStartAt: 90 })], [1])).toBeNull()
  expect(missedOf([wiped, step('Coat', { missedReason: 'All well' })], [1])).toBeNull()
  expect(missedOf([wiped, step('Hold', { kind: 'hold' })], [1])).toBeNull()
})

test('What it costs: the step again, its surface abraded, or it taken off, laid and cured anew', () => {
  const layer = step('Layer', { ...done, stage: 'coat', minutes: 90, productId: 'two', missedMin: 60 })
  const steps = [layer, step('Cure', { kind: 'hold', minutes: 120 }), step('Second layer')]
  const words = (work: 'again' | 'abrade' | 'redo', of = steps) =>
    addedWords(addedWork(of, { late: of.length - 1, kept: 0, work }), minutes => `${minutes} min`)
  expect(words('again', [wiped, step('Coat')])).toBe('Wipe again, 30 min')
  expect(words('again', [{ ...wiped, name: 'Wipe again' }, step('Coat')])).toBe('Wipe again, 30 min')
  expect(words('abrade')).toBe('Abrade Layer, 60 min')
  expect(words('redo')).toBe('Take off Layer, 60 min; Layer again, 90 min; Cure, 120 min')
  const [rough, again] = addedWork(steps, { late: 2, kept: 0, work: 'redo' })
  expect(rough).toMatchObject({ stage: 'correct', productId: null, missed: null, from: 0 })
  expect(again).toMatchObject({ stage: 'coat', productId: 'two', from: 0 })
})
