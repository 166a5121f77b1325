import { expect, test } from 'vitest'
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
