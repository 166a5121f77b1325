import { expect, test } from 'vitest'
import { commonPracticeProfile } from '../../../main/domain/cure/commonPractice.ts'
import { heatCredit } from '../../../main/domain/cure/heating.ts'

/** Invented rows: an hour at 60 °C stands for ten hours, half an hour at 80 °C for as much. */
const profile = {
  ...commonPracticeProfile(),
  forcedCure: [
    { panelC: 60, minutes: 60, standsForMin: 600 },
    { panelC: 80, minutes: 30, standsForMin: 600 },
  ],
}
const credit = (fromAt: number, toAt: number, panelC: number) =>
  heatCredit(profile, 1000, [{ fromAt, toAt, panelC }])

test('A session that meets a row gains what the row says, once its minutes are full', () => {
  expect(credit(1100, 1190, 65)).toEqual({ from: 1100, to: 1160, gainMin: 540 })
  // Of two rows met, the one that gives more.
  expect(credit(1100, 1190, 80)).toEqual({ from: 1100, to: 1130, gainMin: 570 })
})

test('Too cool, too short, or begun before the coat was finished counts for nothing more', () => {
  expect(credit(1100, 1190, 59)).toBeNull()
  expect(credit(1100, 1159, 60)).toBeNull()
  expect(credit(950, 1059, 60)).toBeNull()
  expect(credit(950, 1060, 60)).toEqual({ from: 1000, to: 1060, gainMin: 540 })
})

test('A session that ends before it begins is refused', () => {
  expect(() => credit(1100, 1100, 60)).toThrow(
    expect.objectContaining({ code: 'heating-backwards', field: 'heatings.0.toAt' }),
  )
})
