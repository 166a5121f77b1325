/** A small shop whose shelf runs short: what the close of day is played on. Invented names throughout. */
import type { PageApi } from '../pageApi.ts'
import { setUpQuillhaven } from './quillhaven.ts'

const sizeClasses = ['small', 'medium', 'large', 'xl'] as const
const always = (amount: number, spread: number) =>
  Object.fromEntries(sizeClasses.map(size => [size, { amount, spread }])) as Record<
    (typeof sizeClasses)[number],
    { amount: number; spread: number }
  >

export interface ShelfShop {
  productIds: Record<'shampoo' | 'wipe' | 'coating', string>
  sizeIds: Record<'shampoo' | 'wipe' | 'coating', string>
  treatmentIds: string[]
}

/** Weekdays 08:00 to 18:00, one bay that does everything, two people who do too. */
export async function setUpShelfShop(api: PageApi): Promise<ShelfShop> {
  await setUpQuillhaven(api)
  const products = await api.products.list.query({ archived: false })
  const idOf = (name: string) => products.find(product => product.name === name)!.id
  const productIds = { shampoo: idOf('Wash shampoo'), wipe: idOf('Panel wipe'), coating: idOf('Coating') }
  await count(api, productIds.shampoo, 'usual', 1.02)
  await count(api, productIds.wipe, 'vital', 0.79)
  await count(api, productIds.coating, 'vital', 1.05)
  const treatments = await api.treatments.list.query({ archived: false })
  const chosen = ['Wash and decontaminate', 'Coating, one layer'].map(
    name => treatments.find(treatment => treatment.name === name)!.id,
  )
  await recipe(api, chosen[0]!, 0, productIds.shampoo, 30)
  await recipe(api, chosen[1]!, 1, productIds.wipe, 60)
  await recipe(api, chosen[1]!, 2, productIds.coating, 30)
  const size = (productId: string, label: string, labelAmount: number, tareG: number) =>
    api.shelf.saveSize.mutate({ productId, label, labelAmount, measuredAmount: null, tareG })
  const sizeIds = {
    shampoo: (await size(productIds.shampoo, '1 l', 1_000, 90)).id,
    wipe: (await size(productIds.wipe, '250 ml', 250, 40)).id,
    coating: (await size(productIds.coating, '50 ml', 50, 62)).id,
  }
  const hallam = await supplier(api, 'Hallam Trade Chemicals', 'orders@hallam.example.com')
  const ferring = await supplier(api, 'Ferring Coatings', 'desk@ferring.example.com')
  await offer(api, hallam, productIds.shampoo, sizeIds.shampoo, 'HT-100', 900)
  await offer(api, hallam, productIds.wipe, sizeIds.wipe, 'HT-220', 650)
  await offer(api, ferring, productIds.coating, sizeIds.coating, 'FC-50', 4_800)
  await api.shelf.receive.mutate({
    lines: [
      bottles(productIds.shampoo, sizeIds.shampoo, 2, 1_800),
      bottles(productIds.wipe, sizeIds.wipe, 1, 650),
      bottles(productIds.coating, sizeIds.coating, 1, 4_800),
    ],
  })
  return { productIds, sizeIds, treatmentIds: chosen }
}

/** Books a car for a day, as soon as it goes; returns its job. */
export async function bookCar(
  api: PageApi,
  { treatmentIds }: ShelfShop,
  plate: string,
  askedDate: string,
): Promise<string> {
  const { id: customerId } = await api.customers.save.mutate({ name: `Keeper of ${plate}` })
  const { id: vehicleId } = await api.vehicles.save.mutate({
    customerId,
    plate,
    sizeClass: 'medium',
    finish: 'gloss',
  })
  const asked = { condition: 'good' as const, treatmentIds, askedDate }
  const offers = await api.booking.offers.query({ ...asked, sizeClass: 'medium', finish: 'gloss' })
  const { askedDay } = offers
  if (!askedDay.feasible) throw new Error(`No place for ${plate}: ${askedDay.reasons.join(' ')}`)
  const held = await api.booking.hold.mutate({ ...asked, vehicleId, plan: askedDay.plan })
  await api.booking.confirm.mutate({ jobId: held.jobId, version: held.version })
  return held.jobId
}

/** Works the hands-on steps of a job as they were planned, up to the last of them. */
export async function workSteps(api: PageApi, jobId: string): Promise<void> {
  const { steps, checks, dropOffAt, ...job } = await api.jobs.get.query({ id: jobId })
  const arrived = await api.jobs.arrive.mutate({ id: jobId, version: job.version, at: dropOffAt })
  let { version } = arrived
  for (const { id: checkId } of checks)
    ({ version } = await api.jobs.tick.mutate({ id: jobId, version, checkId, by: 'Imre Vallis' }))
  for (const { position, kind, startAt, endAt } of steps) {
    if (kind === 'hold') continue
    const started = await api.jobs.startStep.mutate({ id: jobId, version, position, at: startAt })
    const finished = await api.jobs.finishStep.mutate({
      id: jobId,
      version: started.version,
      position,
      at: endAt,
    })
    version = finished.version
  }
}

function count(api: PageApi, productId: string, serviceClass: 'vital' | 'usual', densityGPerMl: number) {
  return api.shelf.saveProduct.mutate({
    productId,
    unit: 'ml',
    densityGPerMl,
    lifeAfterOpeningDays: null,
    lifeUnlimited: false,
    storageLeastC: 5,
    storageMostC: 25,
    place: 'Cabinet 1',
    serviceClass,
    holdsUpBookings: true,
  })
}

async function recipe(
  api: PageApi,
  treatmentId: string,
  position: number,
  productId: string,
  amount: number,
): Promise<void> {
  const { version } = await api.shelf.recipes.query({ treatmentId })
  await api.shelf.saveRecipe.mutate({
    treatmentId,
    position,
    version,
    draws: [{ productId, bySize: always(amount, amount / 10) }],
  })
}

async function supplier(api: PageApi, name: string, email: string): Promise<string> {
  const { id } = await api.suppliers.save.mutate({
    name,
    email,
    phone: null,
    account: 'QC-17',
    note: '',
    weekdays: [1, 2, 3, 4, 5],
    closedOn: [],
    cutoffMin: null,
    leadMeanDays: 3,
    leadSdDays: 1,
    minimumOrderMinor: 0,
    carriageMinor: 0,
    freeCarriageFromMinor: null,
  })
  return id
}

function offer(
  api: PageApi,
  supplierId: string,
  productId: string,
  sizeId: string,
  article: string,
  packPriceMinor: number,
) {
  return api.shelf.saveOffer.mutate({
    supplierId,
    productId,
    sizeId,
    article,
    containersPerPack: 1,
    breaks: [{ fromPacks: 1, packPriceMinor }],
    shelfLifeDays: 365,
    preferred: true,
  })
}

/** A delivery's line, for cash: no date, no batch. */
export const bottles = (productId: string, sizeId: string, containers: number, costMinor: number) => ({
  productId,
  sizeId,
  containers,
  expiresOn: null,
  batch: null,
  costMinor,
})
