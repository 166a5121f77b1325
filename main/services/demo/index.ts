import { zonedOf } from '../../domain/calendar/index.ts'
import { type JsonObject, noJson, toJson, withHelp } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { type Desk, stampOf } from '../desk/desk.ts'
import { tellDue } from '../job/notices.ts'
import { assertNoShop } from '../setUp/shopSetUp.ts'
import { demoCustomers, demoVehicles } from './customerData.ts'
import { letHappen } from './happen.ts'
import { writeIntakes } from './intake.ts'
import { writeLoans } from './lending.ts'
import { writeMoney } from './money.ts'
import { demoPhoto } from './photo.ts'
import { placeBookings } from './place.ts'
import { demoProducts } from './productData.ts'
import { writeShelf } from './shelf.ts'
import { demoBays, demoCrew, demoHours, demoLendables, demoShop } from './shopData.ts'
import { demoTreatments } from './treatmentData.ts'
import { writeUpkeep } from './upkeep.ts'
import { writeChecks, writeWeather } from './weather.ts'
import { writeBookings } from './write.ts'

/**
 * Fills an empty database with an invented shop in full swing: bays, crew, treatments, products, forty customers and
 * two weeks of bookings around now, some of them under way. The same now gives the same shop.
 * @throws Refusal where the database already has a shop.
 */
export async function fillDemo(desk: Desk): Promise<void> {
  const nowAt = desk.now()
  await assertNoShop(desk.store.read)
  const photo = await demoPhoto(desk)
  await desk.store.transact({ ...stampOf(desk), followed: false }, async (tx, audit) => {
    await assertNoShop(tx)
    await writeShop(tx)
    const vehicles = demoVehicles(zonedOf(nowAt, demoShop.zone).year)
    await tx.customer.createMany({ data: demoCustomers })
    await tx.vehicle.createMany({ data: vehicles })
    const { floor, placed } = await placeBookings(tx, nowAt, vehicles)
    const happened = letHappen(floor, placed, nowAt)
    await writeBookings(tx, happened, nowAt)
    await writeLoans(tx, happened, nowAt)
    await writeShelf(tx, happened, nowAt)
    await writeWeather(tx, nowAt)
    await writeChecks(tx, happened, nowAt)
    await writeIntakes(tx, happened, photo)
    await writeUpkeep(tx, vehicles, happened, nowAt)
    await writeMoney(tx, audit, happened, nowAt)
    // What fell due before the shop was filled in is old news.
    await tellDue(tx, nowAt)
    audit({ act: 'filled with the demo', entity: 'shop', entityId: '1' })
  })
}

async function writeShop(tx: Tx): Promise<void> {
  await tx.shop.create({ data: { ...demoShop, weekly: demoHours as object[] } })
  await tx.bay.createMany({ data: demoBays.map((bay, position) => ({ ...bay, position })) })
  await tx.crewMember.createMany({
    data: demoCrew.map((person, position) => ({ ...person, position, weekly: noJson })),
  })
  await tx.lendable.createMany({ data: demoLendables.map((thing, position) => ({ ...thing, position })) })
  await tx.product.createMany({
    data: demoProducts.map(product => ({
      ...product,
      cureProfile: (product.cureProfile as unknown as JsonObject) ?? noJson,
    })),
  })
  await tx.treatment.createMany({
    data: demoTreatments.map(({ steps: _, ...treatment }, position) => ({
      ...treatment,
      checks: treatment.checks.map(toJson),
      position,
    })),
  })
  await tx.treatmentStep.createMany({
    data: demoTreatments.flatMap(({ id, steps }) =>
      steps.map((step, position) => ({ ...withHelp(step), treatmentId: id, position })),
    ),
  })
}
