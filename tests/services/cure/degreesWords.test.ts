import { expect, it } from 'vitest'
import { degreesWords, marginWords } from '../../../main/services/cure/degreesWords.ts'

// By the definition of the Fahrenheit scale: 32 °F at 0 °C, 212 °F at 100 °C.
it.each([
  [0, '0 °C', '32 °F', '0 °F'],
  [100, '100 °C', '212 °F', '180 °F'],
  [12.34, '12.3 °C', '54.2 °F', '22.2 °F'],
  [-40, '-40 °C', '-40 °F', '-72 °F'],
])('writes %d as %s or %s, as a difference %s', (celsius, metric, us, margin) => {
  expect(degreesWords(celsius, 'metric')).toBe(metric)
  expect(degreesWords(celsius, 'us')).toBe(us)
  expect(marginWords(celsius, 'metric')).toBe(metric)
  expect(marginWords(celsius, 'us')).toBe(margin)
})
