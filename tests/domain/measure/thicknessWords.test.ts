// 1 mil is 25.4 µm (NIST Special Publication 811, appendix B.8).
import { expect, it } from 'vitest'
import { takenOffWords, thicknessWords } from '../../../main/domain/measure/index.ts'

it('says thickness in whole micrometres, or in mils to a tenth', () => {
  expect(thicknessWords(117.6, 'metric')).toBe('118 µm')
  expect(thicknessWords(117.6, 'us')).toBe('4.6 mil')
})

it('says what is taken off a digit finer', () => {
  expect(takenOffWords(2.54, 'metric')).toBe('2.5 µm')
  expect(takenOffWords(2.54, 'us')).toBe('0.10 mil')
})
