/** A small shop whose coated cars come due: what upkeep is played on. Invented names throughout. */
import type { PageApi } from '../pageApi.ts'
import { setUpQuillhaven } from './quillhaven.ts'

export interface UpkeepCar {
  customerId: string
  vehicleId: string
  layerId: string
}

interface Keeper {
  name: string
  plate: string
  phone: string
  email: string
  /** When the topper on the car was laid. */
  laidOn: string
  /** Days after which it is renewed. */
  days: number
  /** Ways the owner agrees to. */
  agrees: ('email' | 'call' | 'text' | 'letter')[]
}

/** An owner who may be texted, whose topper of December is due in June. */
export const textKeeper: Keeper = {
  name: 'Elke Strand',
  plate: 'QHV 318',
  phone: '+1 202 555 0118',
  email: 'elke@example.com',
  laidOn: '2025-12-01',
  days: 182,
  agrees: ['text'],
}

/** Weekdays 08:00 to 18:00, two bays and two people that do everything. */
export async function setUpUpkeepShop(api: PageApi): Promise<{ topperId: string; treatmentId: string }> {
  await setUpQuillhaven(api)
  const shop = await api.shop.get.query()
  await api.shop.update.mutate({
    ...shop!,
    phone: '+1 202 555 0100',
    email: 'desk@quillhaven.example.com',
    address: '4 Kiln Lane\nQuillhaven',
  })
  const products = await api.products.list.query({ archived: false })
  const treatments = await api.treatments.list.query({ archived: false })
  const topper = products.find(product => product.kind === 'topper')
  if (!topper) throw new Error('The starting products have no topper.')
  return { topperId: topper.id, treatmentId: treatments[0]!.id }
}

/** An owner with a car that has a topper on it, the plan that renews it, and what they agreed to. */
export async function addKeeper(api: PageApi, topperId: string, keeper: Keeper): Promise<UpkeepCar> {
  const { name, plate, phone, email, laidOn, days, agrees } = keeper
  const { id: customerId } = await api.customers.save.mutate({ name, phone, email })
  const { id: vehicleId } = await api.vehicles.save.mutate({
    customerId,
    plate,
    make: 'Corvane',
    model: 'Cassowick',
    colour: 'grey',
    sizeClass: 'medium',
    finish: 'gloss',
  })
  const { id: layerId } = await api.upkeep.recordLayer.mutate({ vehicleId, productId: topperId, laidOn })
  await api.upkeep.savePlan.mutate({
    vehicleId,
    kind: 'topper',
    title: 'topper renewal',
    rule: `FREQ=DAILY;INTERVAL=${days}`,
    anchor: { to: 'last-done', since: laidOn, event: 'the topper' },
    earlyDays: 21,
    lateDays: 14,
  })
  for (const channel of agrees)
    await api.consents.give.mutate({
      customerId,
      channel,
      source: 'intake form',
      wording: 'Please remind me when the topper is due.',
    })
  return { customerId, vehicleId, layerId }
}
