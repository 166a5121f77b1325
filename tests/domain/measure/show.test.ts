import { expect, test } from 'vitest'
import { showTemperature, showTemperatureDifference, showVolume } from '../../../main/domain/measure/show.ts'

test('Volumes turn to the larger unit where people do', () => {
  expect([2.5, 250, 999, 1500].map(ml => showVolume(ml, 'metric', 'en-US'))).toEqual([
    '2.5 mL',
    '250 mL',
    '999 mL',
    '1.5 L',
  ])
  // NIST SP 811: 29.573 53 mL a fluid ounce, 3.785 412 L a gallon.
  expect([14.786765, 473.17648, 3785.412].map(ml => showVolume(ml, 'us', 'en-US'))).toEqual([
    '0.5 fl oz',
    '16 fl oz',
    '1 gal',
  ])
})

test('A difference of temperatures has no zero to shift', () => {
  expect([showTemperature(20, 'metric', 'en-US'), showTemperature(20, 'us', 'en-US')]).toEqual([
    '20°C',
    '68°F',
  ])
  expect(showTemperatureDifference(3, 'us', 'en-US')).toBe('5.4°F')
  expect(showTemperature(20.5, 'metric', 'de-DE').replace('\u00a0', ' ')).toBe('20,5 °C')
})
