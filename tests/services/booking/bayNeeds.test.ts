import { beforeEach, expect, test } from 'vitest'
import { listBays, saveBay } from '../../../main/services/setUp/bays.ts'
import { listTreatments, saveTreatment } from '../../../main/services/setUp/treatments.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

/** The layers of "Two layers" ask for these of their bay. */
async function ask(asks: string[]) {
  const found = (await listTreatments(desk)).find(each => each.id === shop.treatments.twoLayers)!
  const steps = found.steps.map(step => (step.stage === 'coat' ? { ...step, asks } : step))
  await saveTreatment(desk, { ...found, steps })
}

async function offer(name: string, offers: string[], accepted = false) {
  const { id, version, capabilities } = (await listBays(desk)).find(bay => bay.name === name)!
  return saveBay(desk, { id, version, name, capabilities, offers, accepted })
}

test('A layer goes where its whole set is offered, the shop’s own name included, and nowhere else', async () => {
  await ask(['Inspection light', 'Film room'])
  const wish = { treatments: ['twoLayers' as const], vehicle: 0 }
  await expect(bookJob(desk, shop, wish)).rejects.toThrow('film room and inspection light')
  // Each of the two clean bays has one of them; that is not enough.
  await offer('Bay 3', ['inspection light'])
  await offer('Bay 4', ['film room'])
  await expect(bookJob(desk, shop, wish)).rejects.toThrow('film room')
  await offer('Bay 3', ['inspection light', 'Film room', 'lift'])
  const job = await bookJob(desk, shop, wish)
  const layers = job.steps.filter(step => step.stage === 'coat' && step.kind === 'work')
  expect(layers.map(step => step.bayName)).toEqual(['Bay 3', 'Bay 3'])
  await expect(offer('Bay 3', ['lift', 'film room'])).rejects.toMatchObject({ code: 'touches-bookings' })
  await offer('Bay 3', ['film room', 'inspection light'])
  await offer('Bay 3', [], true)
})
