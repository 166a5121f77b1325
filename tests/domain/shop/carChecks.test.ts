import { expect, test } from 'vitest'
import { wheelChecks } from '../../../main/domain/shop/carChecks.ts'
import {
  type CarCheck,
  carChecksOf,
  checkCarChecks,
  coatChecks,
  washChecks,
} from '../../../main/domain/shop/index.ts'

const mask: CarCheck = { moment: 'coat', words: 'Mask' }
const mode: CarCheck = { moment: 'arrival', words: 'Mode' }

test('treatments sold together ask each check once, in the order they fall due', () => {
  expect(carChecksOf([{ checks: [mask, mode] }, { checks: [mask] }, {}])).toEqual([mode, mask])
  const usual = carChecksOf([{ checks: washChecks }, { checks: coatChecks }])
  expect(usual.map(({ moment }) => moment)).toEqual(['arrival', 'arrival', 'coat', 'handover', 'handover'])
})

// What is looked after, and when: common practice, no source; the vehicle's handbook decides.
test('modes and 12 V support are asked for as the car comes, sensors before a coat, bolts torqued again as it goes', () => {
  const asked = carChecksOf([{ checks: washChecks }, { checks: coatChecks }, { checks: wheelChecks }])
  const due = (moment: CarCheck['moment']) =>
    asked.flatMap(check => (check.moment === moment ? [check.words] : [])).join(' | ')
  expect(due('arrival')).toMatch(/[Tt]ransport or wash mode set, 12 V support on.*Sensors, cameras/)
  expect(due('coat')).toMatch(/Sensors, cameras and rough trim masked/)
  expect(due('handover')).toMatch(/mode off, 12 V support taken off.*Masking off.*torqued.*second time/)
})

test('checks are kept trimmed; empty, double and too many ones are refused by their field', () => {
  expect(checkCarChecks([{ ...mask, words: ' Mask ' }], 'checks')).toEqual([mask])
  const refused = (checks: CarCheck[]) => {
    try {
      checkCarChecks(checks, 'checks')
    } catch (error) {
      return (error as { field: string }).field
    }
    return null
  }
  expect(refused([mask, { ...mask, words: ' ' }])).toBe('checks.1.words')
  expect(refused([mask, mask])).toBe('checks.1.words')
  expect(refused(Array.from({ length: 31 }, (_, i) => ({ ...mask, words: `${i}` })))).toBe('checks')
})
