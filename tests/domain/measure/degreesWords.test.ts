// NIST Special Publication 811, appendix B.8: t/°F = 1.8 t/°C + 32, and a difference without the 32.
import { expect, it } from 'vitest'
import { degreesWords, marginWords } from '../../../main/domain/measure/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

it('are in the shop’s measure, to a tenth', () => {
  expect(degreesWords(20, 'us')).toBe('68 °F')
  expect(degreesWords(-40, 'us')).toBe('-40 °F')
  expect(degreesWords(65.5556, 'us')).toBe('150 °F')
  expect(degreesWords(17.25, 'metric')).toBe('17.3 °C')
  expect(marginWords(3, 'us')).toBe('5.4 °F')
  expect(marginWords(3, 'metric')).toBe('3 °C')
  expect([degreesWords(21.5, 'us'), degreesWords(21.5, 'metric')]).toEqual(['70.7 °F', '21.5 °C'])
  speaking('de', () => expect(degreesWords(20.5, 'metric')).toBe('20,5 °C'), {
    country: 'DE',
    units: 'metric',
  })
})
