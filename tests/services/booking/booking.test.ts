import { beforeEach, expect, test } from 'vitest'
import { atWall, zonedOf } from '../../../main/domain/calendar/index.ts'
import type { PlannedStep } from '../../../main/domain/schedule/index.ts'
import { confirmPlace, holdPlace, releasePlace } from '../../../main/services/booking/booking.ts'
import type { OffersInput } from '../../../main/services/booking/inputs.ts'
import type { OffersView, OfferView } from '../../../main/services/booking/offers.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { saveVehicle } from '../../../main/services/records/vehicles.ts'
import { brokenLaws } from '../floorLaws.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:10 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:10:00Z')
  shop = await testShop(desk)
})

const zone = 'America/New_York'
const clock = (at: number) => zonedOf(at, zone).toPlainDateTime().toString().slice(8, 16)

function ask(
  treatments: (keyof TestShop['treatments'])[],
  change: Partial<OffersInput> = {},
): Promise<OffersView> {
  const treatmentIds = treatments.map(name => shop.treatments[name])
  return offers(desk, { sizeClass: 'medium', condition: 'good', treatmentIds, ...change })
}

function feasible(offer: OffersView['soonest']): OfferView {
  if (!offer.feasible) throw new Error(offer.reasons.join(' '))
  return offer
}

async function hold(
  treatments: (keyof TestShop['treatments'])[],
  vehicle = 0,
  kind: 'soonest' | 'leastBlocked' = 'soonest',
) {
  const view = await ask(treatments)
  return holdPlace(desk, {
    vehicleId: shop.vehicles[vehicle]!,
    condition: 'good',
    treatmentIds: treatments.map(name => shop.treatments[name]),
    plan: feasible(view[kind]).plan,
  })
}

test('A two-layer coating is offered, held, confirmed and still there', async () => {
  const view = await ask(['correction', 'twoLayers'])
  expect(view.steps.map(step => [step.name, step.minutes])).toEqual([
    ['Wash', 60],
    ['One-step correction', 240],
    ['Panel wipe', 30],
    ['First layer', 90],
    ['Cure before the next layer', 60],
    ['Second layer', 90],
    ['Cure before pick-up', 240],
  ])
  // Prices in cents: 480.00 and 1,299.00, less the wash of the first, 60 of its 300 minutes, which both share.
  expect([view.priceMinor, view.currency]).toEqual([168_300, 'USD'])
  const offer = feasible(view.soonest)
  const coatEnd = offer.plan.steps[5]!.end
  expect(offer.safeAt - coatEnd).toBe(240)
  expect(offer.advisedAt - coatEnd).toBe(720)
  expect(offer.handoverAt).toBeGreaterThanOrEqual(offer.safeAt)
  expect(offer.reasons.length).toBeGreaterThan(0)

  const held = await holdPlace(desk, {
    vehicleId: shop.vehicles[0]!,
    condition: 'good',
    treatmentIds: [shop.treatments.twoLayers, shop.treatments.correction],
    plan: offer.plan,
  })
  expect(held.heldUntilAt).toBe(desk.now() + 30)
  await confirmPlace(desk, held)
  const job = await desk.store.read.job.findUniqueOrThrow({
    where: { id: held.jobId },
    include: { steps: { orderBy: { position: 'asc' } }, treatments: true },
  })
  expect(job).toMatchObject({
    status: 'booked',
    promisedAt: offer.handoverAt,
    safeAt: offer.safeAt,
    number: 1,
  })
  expect(job.steps.map(step => step.startAt)).toEqual(offer.plan.steps.map(step => step.start))
  expect(job.treatments.map(treatment => treatment.priceMinor).sort()).toEqual([129_900, 48_000])
  expect(await brokenLaws(desk)).toEqual([])
})

test('A place can be had once: the second desk is told what took it, and nothing is half saved', async () => {
  const view = await ask(['twoLayers'])
  const input = {
    condition: 'good' as const,
    treatmentIds: [shop.treatments.twoLayers],
    plan: feasible(view.soonest).plan,
  }
  const [one, two] = await Promise.allSettled([
    holdPlace(desk, { ...input, vehicleId: shop.vehicles[0]! }),
    holdPlace({ ...desk, who: 'second desk' }, { ...input, vehicleId: shop.vehicles[1]! }),
  ])
  expect([one.status, two.status].sort()).toEqual(['fulfilled', 'rejected'])
  const refused = [one, two].find(each => each.status === 'rejected') as PromiseRejectedResult
  expect(refused.reason).toMatchObject({ code: 'stale', field: 'plan' })
  expect(refused.reason.message).toMatch(/Bay \d is taken until .* by (KFR 204|LOW 771) \(job 1\)/)
  expect(await desk.store.read.job.count()).toBe(1)
  expect(await desk.store.read.jobStep.count()).toBe(6)
  expect(await desk.store.read.auditLine.count({ where: { entity: 'job' } })).toBe(1)
  expect(await brokenLaws(desk)).toEqual([])
})

test('A plan that is nobody’s offer is refused, whatever it says', async () => {
  const view = await ask(['twoLayers'])
  const offer = feasible(view.soonest)
  const input = {
    vehicleId: shop.vehicles[0]!,
    condition: 'good' as const,
    treatmentIds: [shop.treatments.twoLayers],
  }
  const { plan } = offer
  const bent = (changed: Partial<OfferView['plan']>) =>
    holdPlace(desk, { ...input, plan: { ...plan, ...changed } })
  const bentStep = (index: number, change: (step: PlannedStep) => Partial<PlannedStep>) =>
    bent({ steps: plan.steps.map((step, i) => (i === index ? { ...step, ...change(step) } : step)) })
  await expect(bent({ handover: plan.handover - 60 })).rejects.toThrow(/ends .*, after the handover/)
  const sooner = bentStep(4, ({ start, end }) => ({ start: start - 30, end: end - 30 }))
  await expect(sooner).rejects.toThrow('Second layer')
  const wet = bentStep(2, () => ({ bay: shop.bays['Bay 1']! }))
  await expect(wet).rejects.toThrow('not equipped for clean work')
  const unskilled = bentStep(2, () => ({ crew: [shop.crew.Mika!] }))
  await expect(unskilled).rejects.toThrow('does not have the skill coating')
  await expect(bent({ steps: plan.steps.slice(0, -1) })).rejects.toThrow('the plan has 5 steps, the job 6')
  expect(await desk.store.read.job.count()).toBe(0)
})

test('A hold lapses: its place is offered again, and who comes second has it', async () => {
  const askedDate = '2026-04-17'
  const onFriday = async () => feasible((await ask(['wash'], { askedDate })).askedDay)
  const holdFriday = async (vehicle: number) =>
    holdPlace(desk, {
      vehicleId: shop.vehicles[vehicle]!,
      condition: 'good',
      treatmentIds: [shop.treatments.wash],
      askedDate,
      plan: (await onFriday()).plan,
    })
  const first = await holdFriday(0)
  expect(clock((await onFriday()).dropOffAt)).toBe('17T09:00')
  desk.setNow('2026-04-15T12:40:00Z')
  // Free again at once; the desk's next act writes it down.
  expect(clock((await onFriday()).dropOffAt)).toBe('17T08:00')
  const second = await holdFriday(1)
  expect(await desk.store.read.job.findUnique({ where: { id: first.jobId } })).toMatchObject({
    status: 'lapsed',
  })
  expect(second.jobNumber).toBe(2)
  await expect(confirmPlace(desk, first)).rejects.toThrow(/Bay 1 is taken until Friday 09:00 by LOW 771/)
  await confirmPlace(desk, second)
  expect(await brokenLaws(desk)).toEqual([])
})

test('A hold that ran out is confirmed after all while its place is free', async () => {
  const view = await ask(['wash'], { askedDate: '2026-04-17' })
  const held = await holdPlace(desk, {
    vehicleId: shop.vehicles[0]!,
    condition: 'good',
    treatmentIds: [shop.treatments.wash],
    askedDate: '2026-04-17',
    plan: feasible(view.askedDay).plan,
  })
  expect(clock(feasible(view.askedDay).dropOffAt)).toBe('17T08:00')
  desk.setNow('2026-04-15T14:00:00Z')
  await confirmPlace(desk, held)
  expect(await desk.store.read.job.findUnique({ where: { id: held.jobId } })).toMatchObject({
    status: 'booked',
  })
  await expect(confirmPlace(desk, { ...held, version: 2 })).rejects.toThrow('booked already')
})

test('A place let go is free, once, and cannot be confirmed', async () => {
  const held = await hold(['wash'])
  const free = feasible((await ask(['wash'])).soonest).dropOffAt
  await releasePlace(desk, held)
  expect(feasible((await ask(['wash'])).soonest).dropOffAt).toBeLessThan(free)
  await expect(releasePlace(desk, held)).rejects.toMatchObject({ code: 'stale' })
  await expect(confirmPlace(desk, held)).rejects.toThrow('was released')
})

test('Confirming twice at once books once', async () => {
  const held = await hold(['wash'])
  const results = await Promise.allSettled([confirmPlace(desk, held), confirmPlace(desk, held)])
  expect(results.map(each => each.status).sort()).toEqual(['fulfilled', 'rejected'])
})

test('One car is not booked for two jobs at once', async () => {
  await hold(['correction'])
  await expect(hold(['wash'])).rejects.toMatchObject({
    code: 'vehicle-booked',
    field: 'vehicleId',
    message: expect.stringMatching(/^KFR 204 is here for job 1 already, 08:15 to .* Choose another day\.$/),
  })
  await hold(['wash'], 1)
})

test('Matte paint is not offered a correction', async () => {
  await expect(ask(['correction'], { finish: 'matte' })).rejects.toMatchObject({
    code: 'never-polished',
    field: 'treatmentIds',
  })
  const plan = feasible((await ask(['correction'])).soonest).plan
  const { customerId } = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: shop.vehicles[0]! } })
  const { id } = await saveVehicle(desk, {
    customerId,
    plate: 'MAT 7',
    make: '',
    model: '',
    colour: '',
    sizeClass: 'medium',
    finish: 'matte',
    note: '',
  })
  const treatmentIds = [shop.treatments.correction]
  await expect(holdPlace(desk, { vehicleId: id, condition: 'good', treatmentIds, plan })).rejects.toThrow(
    'never polished',
  )
})

test('What cannot be is answered with what stands in the way', async () => {
  const bay = shop.bays['Bay 1']!
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.bay.update({ where: { id: bay }, data: { archivedAt: 1 } }),
  )
  const view = await ask(['wash'])
  expect(view.soonest).toMatchObject({ feasible: false })
  expect(view.soonest.reasons.join(' ')).toContain('No bay is equipped for washing')
})

test('Dates that are none, over, or too far off are refused by name', async () => {
  for (const askedDate of ['2026-02-30', '2026-04-14', '2031-01-01'])
    await expect(ask(['wash'], { askedDate })).rejects.toMatchObject({ field: 'askedDate' })
  await expect(
    offers(desk, { sizeClass: 'medium', condition: 'good', treatmentIds: ['gone'] }),
  ).rejects.toMatchObject({
    code: 'treatment-gone',
    field: 'treatmentIds',
  })
})

test('Closed bays, absent people and closed days are kept clear of', async () => {
  const day = (date: string, minute: number) => atWall(date, minute, zone)
  await desk.store.transact({ who: 'test', at: 0 }, async tx => {
    await tx.bayClosure.create({
      data: { bayId: shop.bays['Bay 1']!, fromAt: day('2026-04-15', 0), toAt: day('2026-04-15', 900) },
    })
    await tx.crewAbsence.create({
      data: { crewId: shop.crew.Mika!, fromAt: day('2026-04-15', 900), toAt: day('2026-04-16', 0) },
    })
    await tx.hoursException.create({ data: { date: '2026-04-16', hours: [] } })
  })
  for (const vehicle of [0, 1, 2, 3])
    await confirmPlace(desk, await hold(['correction', 'topped'], vehicle, 'leastBlocked'))
  expect(await brokenLaws(desk)).toEqual([])
  const { dropOffAt } = await desk.store.read.job.findFirstOrThrow({ orderBy: { dropOffAt: 'asc' } })
  expect(dropOffAt).toBeGreaterThanOrEqual(day('2026-04-15', 900))
})
