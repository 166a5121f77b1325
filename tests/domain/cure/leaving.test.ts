import { expect, test } from 'vitest'
import { commonPracticeProfile, leavingAge } from '../../../main/domain/cure/index.ts'

const sheet = { ...commonPracticeProfile(), handoverMin: 240, handoverAdvisedMin: 720, keepDryMin: 480 }

test('A car that stays until it may get wet waits for the later of both figures', () => {
  expect(leavingAge(sheet, 'dry')).toBe(480)
  expect(leavingAge(sheet, 'dry', 'advised')).toBe(720)
  expect(leavingAge({ ...sheet, keepDryMin: 100 }, 'dry')).toBe(240)
})

test('Under a confirmed cover only the handover figure binds', () => {
  expect(leavingAge(sheet, 'covered')).toBe(240)
  expect(leavingAge(sheet, 'covered', 'advised')).toBe(720)
})
