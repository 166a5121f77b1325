import { instantOf } from '../../../main/domain/calendar/instants.ts'
import { sizeClasses } from '../../../main/domain/vehicle/index.ts'
import { confirmPlace, holdPlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { saveProduct } from '../../../main/services/setUp/products.ts'
import { saveDilution } from '../../../main/services/shelf/dilutions.ts'
import type { ShelfFields } from '../../../main/services/shelf/inputs.ts'
import { receiveGoods } from '../../../main/services/shelf/receive.ts'
import { saveRecipe } from '../../../main/services/shelf/recipes.ts'
import { saveShelfProduct, saveSize } from '../../../main/services/shelf/shelfProducts.ts'
import { saveOffer } from '../../../main/services/shelf/supplierOffers.ts'
import { saveSupplier } from '../../../main/services/shelf/suppliers.ts'
import type { TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

export interface ShelfShop extends TestShop {
  /** Product ids: two coats, their topper, and cloths counted in pieces. */
  coating: string
  topper: string
  cloths: string
  /** Size ids: a 50 ml bottle of the coating, 500 ml of the topper, a box of 50 cloths. */
  sizes: Record<'coating' | 'topper' | 'cloths', string>
  supplier: string
  offers: Record<'coating' | 'topper', string>
}

const fields = (change: Partial<ShelfFields>): ShelfFields => ({
  unit: 'ml',
  densityGPerMl: null,
  lifeAfterOpeningDays: null,
  lifeUnlimited: false,
  storageLeastC: 5,
  storageMostC: 25,
  place: 'Cabinet 1',
  serviceClass: 'usual',
  holdsUpBookings: true,
  ...change,
})

/** The test shop with a shelf: three products counted, one supplier, recipes for the coats, nothing in stock yet. */
export async function shelfShop(desk: TestDesk): Promise<ShelfShop> {
  const shop = await testShop(desk)
  const products = await desk.store.read.product.findMany()
  const idOf = (name: string) => products.find(product => product.name === name)!.id
  const coating = idOf('Ovrel Two')
  const topper = idOf('Ovrel Veil')
  const { id: cloths } = await saveProduct(desk, {
    name: 'Lint-free cloths',
    kind: 'consumable',
    cureProfile: null,
  })
  await saveShelfProduct(desk, {
    productId: coating,
    ...fields({ densityGPerMl: 1.05, lifeAfterOpeningDays: 60, serviceClass: 'vital' }),
  })
  await saveShelfProduct(desk, { productId: topper, ...fields({ densityGPerMl: 0.98 }) })
  await saveShelfProduct(desk, {
    productId: cloths,
    ...fields({ unit: 'piece', serviceClass: 'handy', holdsUpBookings: false }),
  })
  const size = async (productId: string, label: string, labelAmount: number, tareG: number | null) =>
    (await saveSize(desk, { productId, label, labelAmount, measuredAmount: null, tareG })).id
  const sizes = {
    coating: await size(coating, '50 ml', 50, 62),
    topper: await size(topper, '500 ml', 500, 48),
    cloths: await size(cloths, 'box of 50', 50, null),
  }
  const { id: supplier } = await saveSupplier(desk, {
    name: 'Carrow Supply',
    email: 'orders@carrow.example.com',
    phone: null,
    account: 'K-1180',
    note: '',
    weekdays: [1, 2, 3, 4, 5],
    closedOn: [],
    cutoffMin: 840,
    leadMeanDays: 3,
    leadSdDays: 1,
    minimumOrderMinor: 0,
    carriageMinor: 900,
    freeCarriageFromMinor: 25_000,
  })
  const offer = async (productId: string, sizeId: string, packPriceMinor: number) =>
    (
      await saveOffer(desk, {
        supplierId: supplier,
        productId,
        sizeId,
        article: `C-${packPriceMinor}`,
        containersPerPack: 1,
        breaks: [{ fromPacks: 1, packPriceMinor }],
        shelfLifeDays: 540,
        preferred: true,
      })
    ).id
  const bought = {
    coating: await offer(coating, sizes.coating, 4_800),
    topper: await offer(topper, sizes.topper, 2_600),
  }
  await recipe(desk, shop.treatments.twoLayers, 2, coating, 30, 4)
  await recipe(desk, shop.treatments.twoLayers, 3, coating, 20, 3)
  return { ...shop, coating, topper, cloths, sizes, supplier, offers: bought }
}

/** Writes a recipe of one product, the same for every size class. */
export async function recipe(
  desk: TestDesk,
  treatmentId: string,
  position: number,
  productId: string,
  amount: number,
  spread: number,
): Promise<void> {
  const { version } = await desk.store.read.treatment.findUniqueOrThrow({ where: { id: treatmentId } })
  const each = Object.fromEntries(sizeClasses.map(size => [size, { amount, spread }]))
  await saveRecipe(desk, {
    treatmentId,
    position,
    version,
    draws: [
      { productId, bySize: each as Record<(typeof sizeClasses)[number], { amount: number; spread: number }> },
    ],
  })
}

/** Puts bottles on the shelf; returns their ids. */
export async function stock(
  desk: TestDesk,
  productId: string,
  sizeId: string,
  containers: number,
  more: { expiresOn?: string; costMinor?: number } = {},
): Promise<string[]> {
  const { lots } = await receiveGoods(desk, {
    lines: [
      {
        productId,
        sizeId,
        containers,
        expiresOn: more.expiresOn ?? null,
        // One batch for all, so that nothing is asked about mixing two.
        batch: 'K-1',
        costMinor: more.costMinor ?? 0,
      },
    ],
  })
  return lots.map(lot => lot.id)
}

/** Books a medium car's two-layer coating as soon as it can be. */
export async function book(
  desk: TestDesk,
  shop: ShelfShop,
  vehicle = 0,
  treatment = shop.treatments.twoLayers,
) {
  const found = await offers(desk, { sizeClass: 'medium', condition: 'good', treatmentIds: [treatment] })
  if (!found.soonest.feasible) throw new Error(found.soonest.reasons.join(' '))
  const held = await holdPlace(desk, {
    vehicleId: shop.vehicles[vehicle]!,
    condition: 'good',
    treatmentIds: [treatment],
    plan: found.soonest.plan,
  })
  const { version } = await confirmPlace(desk, held)
  return { jobId: held.jobId, version }
}

/** Lets a booked job happen as planned until the steps named are done; the clock moves with it. */
export async function workUntil(
  desk: TestDesk,
  job: { jobId: string; version: number },
  position: number,
  last: (version: number) => Promise<{ version: number }> = version =>
    finishStep(desk, { id: job.jobId, version, position }),
): Promise<{ jobId: string; version: number }> {
  const steps = await desk.store.read.jobStep.findMany({
    where: { jobId: job.jobId, kind: 'work', position: { lte: position } },
    orderBy: { position: 'asc' },
  })
  const clock = (at: number) => desk.setNow(instantOf(Math.max(at, desk.now())).toString())
  let { version } = job
  const { arrivedAt } = await desk.store.read.job.findUniqueOrThrow({ where: { id: job.jobId } })
  if (arrivedAt === null) {
    clock(steps[0]!.startAt)
    ;({ version } = await arrive(desk, { id: job.jobId, version }))
  }
  for (const step of steps) {
    if (step.actualEndAt !== null) continue
    clock(step.startAt)
    // Cars of earlier jobs may still stand in the bay: these tests are about the shelf.
    ;({ version } = await startStep(desk, {
      id: job.jobId,
      version,
      position: step.position,
      accepted: true,
    }))
    clock(step.endAt)
    ;({ version } =
      step.position === position
        ? await last(version)
        : await finishStep(desk, { id: job.jobId, version, position: step.position }))
  }
  return { jobId: job.jobId, version }
}

/** A ready-to-use product, made one to nine from the topper, which stands for a concentrate. */
export async function paleRinse(desk: TestDesk, shop: ShelfShop): Promise<string> {
  const { id } = await saveProduct(desk, { name: 'Pale Rinse', kind: 'wash', cureProfile: null })
  await saveShelfProduct(desk, { productId: id, ...fields({ densityGPerMl: 0.98 }) })
  await saveDilution(desk, {
    productId: id,
    concentrateId: shop.topper,
    waterParts: 9,
    lifeDays: 30,
    version: 0,
  })
  return id
}
