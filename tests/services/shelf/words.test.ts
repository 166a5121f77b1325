import { expect, it } from 'vitest'
import { moneyWords, moveWords, plainMoney } from '../../../main/services/shelf/words.ts'

it('writes money with its currency, and without it by thousands', () => {
  expect(moneyWords(4_800, 'USD')).toBe('$48.00')
  expect(moneyWords(4_800, 'EUR')).toBe('€48.00')
  expect(plainMoney(123_456_750, 'USD')).toBe('1,234,567.50')
  // ISO 4217: the yen has no minor unit.
  expect(plainMoney(1_250, 'JPY')).toBe('1,250')
})

const move = { kind: 'use', centi: -3_800, lotNumber: 412, why: null, correctsSeq: null }

it('tells a use by the step it served, else as one of its own', () => {
  const job = { plate: 'KFR 204', stepName: 'First layer' }
  expect(moveWords(move, 'ml', job)).toBe('used 38 ml of no. 412 for "First layer" of KFR 204')
  expect(moveWords({ ...move, why: 'test panel' }, 'ml', null)).toBe('used 38 ml of no. 412: test panel')
})

it('says of a count and of a correction which way they went', () => {
  expect(moveWords({ ...move, kind: 'count' }, 'ml', null)).toBe(
    'counted no. 412: 38 ml less than the ledger had',
  )
  expect(moveWords({ ...move, kind: 'count', centi: 100 }, 'ml', null)).toContain('1 ml more than')
  expect(moveWords({ ...move, kind: 'correction', centi: 100, correctsSeq: 7 }, 'ml', null)).toBe(
    'put right line 7: back into no. 412 1 ml',
  )
})
