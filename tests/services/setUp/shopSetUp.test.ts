import { expect, test } from 'vitest'
import { setUpShop } from '../../../main/services/setUp/shopSetUp.ts'
import { makeDesk } from '../makeDesk.ts'

test('hours of the first run are refused as times are written in the country chosen', async () => {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  const refusalIn = (country: string) =>
    setUpShop(desk, {
      name: 'Ashdown Paint Care',
      zone: 'Europe/Zurich',
      currency: 'CHF',
      units: 'metric',
      country,
      weekly: [{ weekday: 1, from: 1020, to: 480 }],
      bays: [],
      crew: [],
      starters: false,
    }).catch((error: Error) => error.message.replaceAll('\u202f', ' ').replaceAll('\u00a0', ' '))
  // CLDR: 24 hours in Switzerland, 12 in the United States.
  expect(await refusalIn('CH')).toMatch(/^Closing at 08:00 is not after opening at 17:00/)
  expect(await refusalIn('US')).toMatch(/^Closing at 8:00 am is not after opening at 5:00 pm/)
})
