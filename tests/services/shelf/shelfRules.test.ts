import { beforeEach, expect, it } from 'vitest'
import { getRules, saveRules } from '../../../main/services/shelf/shelfRules.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

it('begins with what is usual, labels by the shop’s country, and keeps what the owner sets', async () => {
  const usual = await getRules(desk)
  expect(usual).toMatchObject({ version: 0, regime: null, regimeUsed: 'us-osha', flammableLimitMl: null })
  const { regimeUsed: _, ...rules } = usual
  await saveRules(desk, { ...rules, regime: 'eu-clp', services: { ...rules.services, vital: 0.97 } })
  expect(await getRules(desk)).toMatchObject({
    version: 1,
    regimeUsed: 'eu-clp',
    services: { vital: 0.97, usual: 0.95 },
  })
  await expect(saveRules(desk, rules)).rejects.toMatchObject({ code: 'stale' })
})

it('refuses a share of draws nobody can aim at, by its name', async () => {
  const { regimeUsed: _, ...rules } = await getRules(desk)
  const services = { ...rules.services, handy: 1 }
  await expect(saveRules(desk, { ...rules, services })).rejects.toMatchObject({ field: 'services.handy' })
})
