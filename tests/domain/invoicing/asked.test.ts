import { expect, test } from 'vitest'
import { electronicAsked } from '../../../main/domain/invoicing/asked.ts'

test('the norm asks in the 27 member states, by their codes, and nowhere else', () => {
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ']
  const asked = letters.flatMap(a => letters.map(b => a + b)).filter(electronicAsked)
  expect(asked).toHaveLength(27)
  expect(asked).toEqual(expect.arrayContaining(['DE', 'FR', 'GR', 'IE', 'HR', 'CY']))
  for (const code of ['GB', 'CH', 'NO', 'US', 'EL', 'de', '']) expect(electronicAsked(code)).toBe(false)
})
