import { expect, it } from 'vitest'
import { sheetDoubts } from '../../../main/domain/hazard/index.ts'
import { carThickness } from '../../../main/domain/measure/index.ts'
import { checkProduct } from '../../../main/domain/shelf/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

const ways = (units: 'us' | 'metric') => ({ country: 'US', units })
const wordsOf = (units: 'us' | 'metric', refused: () => unknown): string =>
  speaking(
    'en',
    () => {
      try {
        return String(refused())
      } catch (error) {
        return (error as Error).message
      }
    },
    ways(units),
  )

const sheet = {
  signalWord: null,
  hazardCodes: null,
  storageMinC: 30,
  storageMaxC: 25,
} as Parameters<typeof sheetDoubts>[0]
const product = {
  name: 'Coating',
  densityGPerMl: null,
  lifeAfterOpeningDays: null,
  storage: { leastC: 25, mostC: 5 },
} as Parameters<typeof checkProduct>[0]
const readings = [{ panel: 'Roof', spot: 1, um: 5_080 }]

// 1.8 °F a degree from 32 °F on; 25.4 µm a mil. Source: NIST Special Publication 811, appendix B.8.
it.each([
  ['a range of storage', () => checkProduct(product), 'between 25 °C and 5 °C', 'between 77 °F and 41 °F'],
  [
    'a sheet read wrongly',
    () => sheetDoubts(sheet, 'eu-clp')[0],
    '(30 °C) is above the highest (25 °C)',
    '(86 °F) is above the highest (77 °F)',
  ],
  [
    'paint that is none',
    () => carThickness(readings),
    '5080 µm is no paint; give 1 µm to 5000 µm',
    '200.00 mil is no paint; give 0.04 mil to 196.9 mil',
  ],
])('%s is refused in the shop’s measure', (_, refused, metric, us) => {
  expect(wordsOf('metric', refused)).toContain(metric)
  expect(wordsOf('us', refused)).toContain(us)
})

it('reasons of a thickness speak the shop’s measure where nobody says which', () => {
  const low = [
    { panel: 'Roof', spot: 1, um: 120 },
    { panel: 'Bonnet', spot: 1, um: 500 },
    { panel: 'Tailgate', spot: 1, um: 118 },
  ]
  const told = (units: 'us' | 'metric') => wordsOf(units, () => JSON.stringify(carThickness(low)))
  expect(told('metric')).toMatch(/µm/)
  expect(told('metric')).not.toMatch(/\bmil\b/)
  expect(told('us')).toMatch(/\bmil\b/)
  expect(told('us')).not.toMatch(/µm/)
})
