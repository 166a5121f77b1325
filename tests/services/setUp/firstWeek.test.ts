import { expect, test } from 'vitest'
import { fillDemo } from '../../../main/services/demo/index.ts'
import { saveMailSettings } from '../../../main/services/desk/mailSettings.ts'
import { getFirstWeek } from '../../../main/services/setUp/firstWeek.ts'
import { listProducts, saveProduct } from '../../../main/services/setUp/products.ts'
import { getShop, updateShop } from '../../../main/services/setUp/shop.ts'
import { listTreatments, saveTreatment } from '../../../main/services/setUp/treatments.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk } from '../makeDesk.ts'
import { shelfShop, stock } from '../shelf/shelfShop.ts'

const done = async (desk: Parameters<typeof getFirstWeek>[0]) =>
  (await getFirstWeek(desk))?.filter(step => step.done).map(({ step }) => step)

test('Each first step is done once the shop’s own data show it, and nobody is reminded once all are', async () => {
  const desk = await makeDesk('2026-04-15T14:00:00Z')
  expect(await getFirstWeek(desk)).toBeNull()
  const shop = await shelfShop(desk)
  const treatments = await listTreatments(desk)
  const wash = treatments.find(({ id }) => id === shop.treatments.wash)!
  const free = { small: 0, medium: 0, large: 0, xl: 0 }
  await saveTreatment(desk, { ...wash, prices: free })
  expect(await done(desk)).toEqual([])

  await saveTreatment(desk, { ...wash, prices: { ...free, medium: 9_500 }, version: wash.version + 1 })
  expect(await done(desk)).toEqual(['prices'])

  const coating = (await listProducts(desk)).find(({ id }) => id === shop.coating)!
  const { cureProfile } = coating
  const sources = { ...cureProfile!.sources, tackFreeMin: 'data sheet' as const }
  await saveProduct(desk, { ...coating, cureProfile: { ...cureProfile!, sources } })
  expect(await done(desk)).toEqual(['prices', 'cure'])

  await stock(desk, shop.coating, shop.sizes.coating, 1)
  expect(await done(desk)).toEqual(['prices', 'cure', 'shelf'])

  await bookJob(desk, shop, { treatments: ['wash'] })
  expect(await done(desk)).toEqual(['prices', 'cure', 'booking', 'shelf'])

  const view = (await getShop(desk))!
  await updateShop(desk, { ...view, phone: '(212) 555-0101' })
  expect(await done(desk)).not.toContain('papers')
  await updateShop(desk, {
    ...view,
    phone: '(212) 555-0101',
    address: '4 Quarry Lane',
    version: view.version + 1,
  })
  expect(await done(desk)).toContain('papers')

  await saveMailSettings(desk, {
    host: '127.0.0.1',
    port: 25,
    security: 'none',
    user: null,
    password: null,
    fromName: 'Ashdown Paint Care',
    fromAddress: 'hello@ashdown.example.com',
  })
  expect(await getFirstWeek(desk)).toBeNull()
})

test('Two weeks on, and in the demo, nobody is reminded', async () => {
  const desk = await makeDesk('2026-04-15T14:00:00Z')
  await shelfShop(desk)
  desk.setNow('2026-04-29T14:00:00Z')
  expect(await getFirstWeek(desk)).not.toBeNull()
  desk.setNow('2026-04-29T14:01:00Z')
  expect(await getFirstWeek(desk)).toBeNull()

  const demo = await makeDesk('2026-04-15T14:00:00Z')
  await fillDemo(demo)
  expect(await getFirstWeek(demo)).toBeNull()
})
