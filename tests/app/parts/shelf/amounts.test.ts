import { expect, test } from 'vitest'
import { amountText } from '../../../../app/parts/shelf/amounts.ts'

test.each([
  [550.34, 'ml', '550 ml'],
  [2.54, 'ml', '2.5 ml'],
  [999.4, 'ml', '999 ml'],
  [3416.68, 'g', '3.42 kg'],
  [14_734, 'ml', '14.7 l'],
  [-1000, 'ml', '-1 l'],
  [-2.3, 'ml', '-2.3 ml'],
  [14.4, 'piece', '14 pieces'],
  [1, 'piece', '1 piece'],
] as const)('%d %s is %s', (amount, unit, words) => {
  expect(amountText(amount, unit)).toBe(words)
})
