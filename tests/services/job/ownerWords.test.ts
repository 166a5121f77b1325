import { beforeEach, expect, test } from 'vitest'
import { momentWords, weekdayDate } from '../../../main/domain/calendar/index.ts'
import { coatsOf } from '../../../main/domain/floor/index.ts'
import { confirmCover } from '../../../main/services/job/cover.ts'
import { handOver } from '../../../main/services/job/jobActs.ts'
import { jobOnFloor } from '../../../main/services/job/jobOnFloor.ts'
import { careSheet, ownerWords, setOutside } from '../../../main/services/job/ownerWords.ts'
import { saveReach } from '../../../main/services/reminders/consents.ts'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
import { cureShare, pdfWords } from '../../documents/poppler.ts'
import { bookJob } from '../bookJob.ts'
import { does, job, keepsDryADay, layeredCar } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York. The coating lets the car go after 4 h, keeps it dry for 24 h and unwashed
// for 7 days: common practice, no source.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await keepsDryADay(desk)
})

const text = async (id: string) => (await ownerWords(desk, { id }))?.text ?? ''

test('The owner is told until when to keep the car dry and when to wash it, for the weather outside', async () => {
  const id = await layeredCar(desk, shop)
  for (const position of [0, 1, 2, 4]) await does(desk, id, position)
  // The second layer is done at 13:30; without a cover the car stays until it may get wet.
  expect(await text(id)).toContain('Your car may get wet from the time you have it.')
  await confirmCover(desk, { id, version: (await job(desk, id)).version, by: 'Ines Vale' })
  const unknown = await text(id)
  // It leaves at 17:30, 4 h old, with 20 h left at the profile's temperature.
  expect(unknown).toContain('Keep your car dry until Thu 16 April 2026, 13:30')
  expect(unknown).toContain('as no weather was noted')
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.shop.updateMany({ data: { outsideUsual: { decFeb: 0, marMay: 10, junAug: 25, sepNov: 15 } } }),
  )
  const season = await text(id)
  // At 10 °C half as fast, by the doubling rule: 40 h.
  expect(season).toContain('Keep your car dry until Fri 17 April 2026, 09:30')
  expect(season).toContain('50 °F outside (the usual of the season)')
  await setOutside(desk, { id, version: (await job(desk, id)).version, outsideC: 0 })
  const noted = await text(id)
  // A quarter as fast: 80 h for what is left of the dry time, 656 for what is left until the wash.
  expect(noted).toContain('Keep your car dry until Sun 19 April 2026, 01:30')
  expect(noted).toContain('not before Wed 13 May 2026, 01:30')
  expect(noted).toContain('as noted for this day')
  expect(noted).not.toMatch(/%|\bsafe\b/i)
  await expect(
    setOutside(desk, { id, version: (await job(desk, id)).version, outsideC: 90 }),
  ).rejects.toMatchObject({ code: 'weather-impossible', field: 'outsideC' })
  const words = pdfWords((await careSheet(desk, { id })).bytes)
  expect(words).not.toMatch(cureShare)
  expect(words).toContain('Keep it dry until Sun 19 April 2026, 01:30')
  expect(words).toContain('No wash before Wed 13 May 2026, 01:30')
  expect(words).toContain('as noted for this day')
})

test('Where it is too cold for one coat ever to get there, no day is named, whatever the other takes', async () => {
  const id = await layeredCar(desk, shop)
  for (const position of [0, 1, 2, 4]) await does(desk, id, position)
  await confirmCover(desk, { id, version: (await job(desk, id)).version, by: 'Ines Vale' })
  await setOutside(desk, { id, version: (await job(desk, id)).version, outsideC: -10 })
  const { id: productId, cureProfile } = await desk.store.read.product.findFirstOrThrow({
    where: { name: 'Ovrel Two' },
  })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.product.update({
      where: { id: productId },
      data: { cureProfile: { ...(cureProfile as object), rate: { rule: 'linear', datumC: 0 } } },
    }),
  )
  const said = await text(id)
  expect(said).toContain('In this cold the coating does not cure; ask us before your car leaves its cover.')
  expect(said).toContain('Ask us before you wash it for the first time')
  expect(said).not.toContain('may get wet')
})

test('The care sheet says what was applied, when it is fully cured by the clock, and when each visit is due', async () => {
  const id = await layeredCar(desk, shop)
  for (const position of [0, 1, 2, 4]) await does(desk, id, position)
  await confirmCover(desk, { id, version: (await job(desk, id)).version, by: 'Ines Vale' })
  desk.setNow('2026-04-16T13:00:00Z')
  await handOver(desk, { id, version: (await job(desk, id)).version })
  const words = pdfWords((await careSheet(desk, { id })).bytes)
  expect(words).not.toMatch(cureShare)
  const left = await jobOnFloor(desk.store.read, desk.now(), id)
  const coats = coatsOf(left.job.steps, left.products)
  // Without a weather noted the days after count at the profile's own temperature: cure age and time are the same.
  const cured = Math.max(
    ...coats.map(({ laid, product }) => {
      const missing = product.cureProfile.fullCure.lateMin - laid!.clock.ageAt(left.job.leftAt!)
      return left.job.leftAt! + Math.ceil(missing - 1e-6)
    }),
  )
  expect(words).toContain(`Fully cured on ${momentWords(cured, left.floor.zone)}`)
  for (const { product } of coats) expect(words).toContain(product.name)
  const { plans } = await carUpkeep(desk, { vehicleId: left.job.vehicleId })
  const due = plans.filter(plan => plan.next !== null)
  expect(due.length).toBeGreaterThan(0)
  for (const { title, next } of due) {
    expect(words).toContain(title)
    expect(words).toContain(weekdayDate(next!.dueOn))
  }
})

test('A car on which nothing cures has no such words', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'], kind: 'soonest' })
  expect(await ownerWords(desk, { id })).toBeNull()
  await expect(careSheet(desk, { id })).rejects.toMatchObject({ code: 'missing' })
})

test('An owner who reads German is told in German, in a shop that speaks English', async () => {
  const id = await layeredCar(desk, shop)
  const { customer } = await job(desk, id)
  await saveReach(desk, { customerId: customer.id, language: 'de-AT', zone: null, postal: '', version: 0 })
  for (const position of [0, 1, 2, 4]) await does(desk, id, position)
  expect(await text(id)).toContain('Ihr Auto darf nass werden, sobald Sie es haben.')
  const words = pdfWords((await careSheet(desk, { id })).bytes)
  expect(words).toContain('Erste Wäsche nicht vor')
  expect(words).not.toContain('No wash before')
  // What the desk reads stays in the shop's language, read in the same minute.
  expect((await job(desk, id)).cureWords.join(' ')).not.toMatch(/Datenblatt/)
})
