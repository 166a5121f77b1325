import { expect, test } from 'vitest'
import { sell } from '../../../main/services/setUp/soldTreatments.ts'
import { moneyShop } from '../money/sample.ts'

test('A price follows size and condition, and says why it is dearer', async () => {
  const { desk, shop } = await moneyShop({ wornPercent: '10', heavyPercent: '25' })
  const treatmentIds = [shop.treatments.wash, shop.treatments.correction]
  const sold = (condition: 'good' | 'worn' | 'heavy', sizeClass: 'medium' | 'xl' = 'medium') =>
    sell(desk.store.read, { treatmentIds, sizeClass, condition, finish: 'gloss' })
  const prices = async (...of: Parameters<typeof sold>) =>
    (await sold(...of)).treatments.map(({ priceMinor }) => priceMinor)
  const [wash, correction] = (await prices('good')) as [number, number]
  // A wash is the same work on any paint.
  expect(await prices('worn')).toEqual([wash, Math.round(correction * 1.1)])
  expect(await prices('heavy')).toEqual([wash, Math.round(correction * 1.25)])
  // The test shop asks 200.00 more for the largest size.
  expect(await prices('heavy', 'xl')).toEqual([wash + 20_000, Math.round((correction + 20_000) * 1.25)])
  expect((await sold('good')).notes.join()).not.toMatch(/costs/)
  expect((await sold('worn')).notes).toContain('Worn paint costs 10 % more, for Single correction.')
  expect((await sold('heavy')).notes).toContain('Heavily worn paint costs 25 % more, for Single correction.')
})
