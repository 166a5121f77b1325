/** A shop in which every form of the app that edits something can be opened. Invented names throughout. */
import type { PageApi } from '../pageApi.ts'
import { remindersWritten } from '../remindersWritten.ts'
import { mailAt } from '../shops/mailAt.ts'
import { bookCar, setUpShelfShop, workSteps } from '../shops/shelfShop.ts'
import { addKeeper } from '../shops/upkeepShop.ts'

/** What the addresses of the forms are made of. */
export interface Ids {
  bay: string
  crew: string
  treatment: string
  lendable: string
  product: string
  /** Mixed from a concentrate; made of pieces that are washed. */
  mixed: string
  washed: string
  supplier: string
  draftOrder: string
  sentOrder: string
  customer: string
  vehicle: string
  template: string
  message: string
  job: string
  /** Its intake is signed. */
  signedJob: string
}

/** Everything but the day's work; `now` is eight o'clock on Tuesday 14 April 2026. */
export async function setUpEveryForm(api: PageApi): Promise<Ids> {
  const shelf = await setUpShelfShop(api)
  const job = await bookCar(api, shelf, 'QLV 318', '2026-04-14')
  const shop = await api.shop.get.query()
  await api.shop.update.mutate({ ...shop!, phone: '+1 202 555 0100', email: 'desk@quillhaven.example.com' })
  const bay = (await api.bays.list.query({ archived: false }))[0]!.id
  const crew = (await api.crew.list.query({ archived: false }))[0]!.id
  const [fromAt, toAt] = [Date.UTC(2026, 5, 1) / 60_000, Date.UTC(2026, 5, 2) / 60_000]
  await api.bays.saveClosure.mutate({ bayId: bay, fromAt, toAt, reason: 'Floor' })
  await api.hours.saveException.mutate({ date: '2026-12-25', hours: [], note: 'Holiday' })
  await mailAt(api, 2525)
  const suppliers = await api.suppliers.list.query({ archived: false })
  const supplier = suppliers.find(each => each.name.startsWith('Hallam'))!.id
  const product = shelf.productIds.shampoo
  const mixed = shelf.productIds.wipe
  await api.shelf.saveDilution.mutate({
    productId: mixed,
    concentrateId: product,
    waterParts: 9,
    lifeDays: 30,
    version: 0,
  })
  const washed = (await api.products.save.mutate({ name: 'Pads', kind: 'consumable', cureProfile: null })).id
  const { shelf: like } = await api.shelf.product.query({ id: product })
  await api.shelf.saveProduct.mutate({ ...like!, productId: washed, unit: 'piece', densityGPerMl: null })
  const grades = [{ name: 'Finish', washes: 15 }]
  await api.shelf.saveGrades.mutate({ productId: washed, version: 0, grades })
  const { offers } = await api.shelf.product.query({ id: product })
  const order = (packs: number) =>
    api.orders.save.mutate({ supplierId: supplier, note: '', lines: [{ offerId: offers[0]!.id, packs }] })
  const sent = await order(4)
  await api.orders.send.mutate({ id: sent.id, version: sent.version, how: 'paper' })
  const draft = await order(2)
  const topper = (await api.products.list.query({ archived: false })).find(each => each.kind === 'topper')!
  const { customerId, vehicleId } = await addKeeper(api, topper.id, {
    name: 'Ansel Mirrow',
    plate: 'QHV 200',
    phone: '+1 202 555 0110',
    email: 'ansel@example.com',
    laidOn: '2025-10-20',
    days: 182,
    agrees: ['email'],
  })
  await api.customers.saveContact.mutate({ customerId, name: 'Ira Holt', role: 'drives it' })
  await remindersWritten(api)
  const { messages } = await api.reminders.batch.query()
  const { templates } = await api.templates.list.query()
  const lendable = (await api.lendables.save.mutate({ name: 'Blue loan car', kind: 'loan car' })).id
  return {
    bay,
    crew,
    lendable,
    treatment: shelf.treatmentIds[0]!,
    product,
    mixed,
    washed,
    supplier,
    draftOrder: draft.id,
    sentOrder: sent.id,
    customer: customerId,
    vehicle: vehicleId,
    template: templates[0]!.id,
    message: messages[0]!.id,
    job,
    signedJob: await signedIntake(api, await bookCar(api, shelf, 'QLV 319', '2026-04-20')),
  }
}

async function signedIntake(api: PageApi, jobId: string): Promise<string> {
  const { draft, version } = await api.intake.get.query({ jobId })
  await api.intake.sign.mutate({
    jobId,
    version,
    draft: { ...draft, odometer: 1200, keys: 1, damageAgreed: true },
    ownerName: 'Ansel Mirrow',
    signature: 'M10 90L40 30L70 120L100 60',
  })
  return jobId
}

/** The booked car is worked on, so that there is something to confirm and a record to sign. */
export async function workTheDay(api: PageApi, { job }: Ids): Promise<void> {
  await workSteps(api, job)
}
