import { beforeEach, describe, expect, it } from 'vitest'
import { listProducts, saveProduct } from '../../../main/services/setUp/products.ts'
import { listTreatments, saveTreatment } from '../../../main/services/setUp/treatments.ts'
import { confirmDraws } from '../../../main/services/shelf/confirmDraws.ts'
import { shelfList, shelfProduct } from '../../../main/services/shelf/productPage.ts'
import { learnRecipe, treatmentRecipes } from '../../../main/services/shelf/recipes.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, recipe, type ShelfShop, shelfShop, stock, workUntil } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

/** Lets so many first layers be laid, each with an amount of its own; the jobs stay in the shop. */
async function layers(amounts: readonly number[]) {
  await stock(desk, shop.coating, shop.sizes.coating, 40)
  for (const [i, amount] of amounts.entries()) {
    const booked = await book(desk, shop, i % 4)
    const { position } = await desk.store.read.stepDraw.findFirstOrThrow({
      where: { jobId: booked.jobId },
      orderBy: { position: 'asc' },
    })
    const done = await workUntil(desk, booked, position)
    await confirmDraws(desk, {
      ...done,
      position,
      draws: [{ productId: shop.coating, lotId: null, amount, how: 'corrected' }],
    })
  }
}

describe('what the shelf learns of a step', () => {
  it('is what the crew really draws, a spill set aside, and becomes the recipe when somebody says so', async () => {
    // Around 38 ml where the recipe says 30, and one spilt bottle.
    await layers([38, 37.5, 39, 38.5, 120, 37, 38, 39.5])
    const waiting = await book(desk, shop, 0)
    const page = await shelfProduct(desk, { id: shop.coating })
    const first = page.learning.find(each => each.stepName === 'First layer')!
    expect(first).toMatchObject({
      sizeClass: 'medium',
      recipe: { amount: 30, spread: 4 },
      steps: 8,
      outliers: 1,
    })
    // The middle of the eight readings (sorted: 37, 37.5, 38, 38, 38.5, 39, 39.5, 120) is 38.25.
    expect(first.typical).toBe(38.25)
    expect(first.spread).toBeLessThan(2)
    expect(first.suggestion).toMatchObject({ amount: 38.25 })
    expect(first.byCrew.reduce((sum, hand) => sum + hand.steps, 0)).toBe(8)
    const { amount, spread } = first.suggestion!
    const learned = {
      stage: 'coat' as const,
      stepName: 'First layer',
      productId: shop.coating,
      sizeClass: 'medium' as const,
    }
    expect(await learnRecipe(desk, { ...learned, amount, spread })).toEqual({ treatments: 1 })
    const recipes = await treatmentRecipes(desk, { treatmentId: shop.treatments.twoLayers })
    const draws = recipes.steps.find(step => step.stepName === 'First layer')!.draws
    expect(draws[0]!.bySize).toMatchObject({ medium: { amount: 38.25 }, small: { amount: 30 } })
    // The booked job draws by the new recipe, what was done stays as it was, and nothing more is suggested.
    expect(
      await desk.store.read.stepDraw.findFirst({
        where: { jobId: waiting.jobId },
        orderBy: { position: 'asc' },
      }),
    ).toMatchObject({
      expectedCenti: 3825,
    })
    const after = (await shelfProduct(desk, { id: shop.coating })).learning.find(
      each => each.stepName === 'First layer',
    )!
    expect(after.suggestion).toBeNull()
    expect(
      await desk.store.read.stepDraw.count({ where: { expectedCenti: 3000, NOT: { confirmedAt: null } } }),
    ).toBe(8)
  })

  it('is written into the steps with this product alone; into those named so where none has it', async () => {
    const learned = {
      stage: 'coat' as const,
      stepName: 'First layer',
      productId: shop.coating,
      sizeClass: 'medium' as const,
      amount: 33,
      spread: 2,
    }
    const amountsOf = async (productId: string) => {
      const steps = await desk.store.read.treatmentStep.findMany({ where: { name: 'First layer' } })
      return steps.map(step =>
        (step.draws as { productId: string; bySize: { medium: { centi: number } } }[])
          .filter(line => line.productId === productId)
          .map(line => line.bySize.medium.centi),
      )
    }
    // A second treatment names its steps the same and lays another product in them.
    const coating = (await listProducts(desk)).find(each => each.id === shop.coating)!
    const { id: productId } = await saveProduct(desk, {
      name: 'Ovrel Three',
      kind: 'coating',
      cureProfile: coating.cureProfile,
    })
    const treatment = (await listTreatments(desk)).find(each => each.id === shop.treatments.twoLayers)!
    const other = {
      ...treatment,
      id: undefined,
      version: undefined,
      name: 'Two layers of another',
      steps: treatment.steps.map(step => ({
        ...step,
        id: undefined,
        productId: step.productId === shop.coating ? productId : step.productId,
      })),
    }
    await saveTreatment(desk, other)
    expect(await learnRecipe(desk, learned)).toEqual({ treatments: 1 })
    expect((await amountsOf(shop.coating)).filter(each => each.length > 0)).toEqual([[3_300]])
    // Cloths are in no step yet: what was learned of them goes into both.
    expect(await learnRecipe(desk, { ...learned, productId: shop.cloths })).toEqual({ treatments: 2 })
    expect(await amountsOf(shop.cloths)).toEqual([[3_300], [3_300]])
    // A recipe that has it counts as the step's own product does.
    const { id } = await desk.store.read.treatment.findFirstOrThrow({ where: { name: other.name } })
    await recipe(desk, id, 3, shop.cloths, 5, 1)
    const second = { ...learned, stepName: 'Second layer', productId: shop.cloths }
    expect(await learnRecipe(desk, second)).toEqual({ treatments: 1 })
    // And the step's own product does without any recipe of it.
    await recipe(desk, shop.treatments.twoLayers, 2, shop.cloths, 5, 1)
    expect(await learnRecipe(desk, learned)).toEqual({ treatments: 1 })
  })

  it('asks for more than a few readings before it speaks', async () => {
    await layers([38, 38, 38])
    const { learning } = await shelfProduct(desk, { id: shop.coating })
    expect(learning).toMatchObject([{ steps: 3, suggestion: null }])
  })
})

describe('a treatment’s recipes', () => {
  it('stay with their steps through an edit of the treatment, also where a step gets a new name', async () => {
    const treatment = (await listTreatments(desk)).find(each => each.id === shop.treatments.twoLayers)!
    const booked = await book(desk, shop)
    await saveTreatment(desk, {
      ...treatment,
      steps: treatment.steps.map(step =>
        step.name === 'First layer' ? { ...step, name: 'Base coat' } : step,
      ),
    })
    const { steps } = await treatmentRecipes(desk, { treatmentId: treatment.id })
    expect(steps.map(step => [step.stepName, step.draws[0]?.bySize.medium.amount ?? null])).toEqual([
      ['Wash', null],
      ['Panel wipe', null],
      ['Base coat', 30],
      ['Second layer', 20],
    ])
    // The job booked before keeps its step, and what it is expected to draw.
    const draws = await desk.store.read.stepDraw.findMany({
      where: { jobId: booked.jobId },
      orderBy: { position: 'asc' },
    })
    expect(draws.map(draw => draw.expectedCenti)).toEqual([3000, 2000])
  })
})

describe('the shelf’s list', () => {
  it('holds every product, those not counted yet as well', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 2, { expiresOn: '2026-09-01' })
    const list = await shelfList(desk)
    expect(list.find(each => each.id === shop.coating)).toMatchObject({
      unit: 'ml',
      onHand: 100,
      lots: 2,
      nextExpiry: '2026-09-01',
      openLot: null,
    })
    expect(list.find(each => each.id === shop.topper)).toMatchObject({ onHand: 0, lots: 0 })
  })
})
