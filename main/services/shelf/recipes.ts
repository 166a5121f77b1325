/** What a treatment's steps draw, as the owner writes it and as the shelf has learned it. */
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { centiOf, unitsOf } from '../../domain/shelf/index.ts'
import { toJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { countedProduct, countedProducts } from './countedProducts.ts'
import type { LearnedInput, RecipeInput } from './inputs.ts'
import { bySize, openJobsWith, type RecipeLine, recipeOf, workKey, writeStepDraws } from './stepDraws.ts'

/** Says what one step of a treatment draws; jobs already booked draw by it too, where they still have this step. */
export function saveRecipe(desk: Desk, input: RecipeInput): Promise<{ version: number }> {
  return act(desk, async (tx, audit) => {
    const { treatmentId, position, version } = input
    const draws = input.draws.map((line, i) => lineFrom(line, `draws.${i}`))
    const counted = await tx.shelfProduct.findMany({ select: { productId: true } })
    draws.forEach((line, i) => {
      if (!counted.some(each => each.productId === line.productId))
        refuse(
          'not-counted',
          { [`draws.${i}.productId`]: line.productId },
          say('This product is not counted yet; say on its page how first.'),
        )
    })
    if (new Set(draws.map(line => line.productId)).size < draws.length)
      refuse('product-twice', { draws }, say('A product stands here twice; give its amount once.'))
    const step = await tx.treatmentStep.findFirst({ where: { treatmentId, position } })
    if (!step) refuse('missing', { position }, say('This step is not there; look at the treatment again.'))
    const { count } = await tx.treatment.updateMany({
      where: { id: treatmentId, version },
      data: { version: { increment: 1 } },
    })
    assertFresh(count, 'treatment', treatmentId)
    await tx.treatmentStep.update({ where: { id: step.id }, data: { draws: draws.map(toJson) } })
    await writeStepDraws(tx, await openJobsWith(tx, [treatmentId], desk.now()), desk.now())
    audit({
      act: 'recipe changed',
      entity: 'treatment',
      entityId: treatmentId,
      detail: { position, draws: draws.map(toJson) },
    })
    return { version: version + 1 }
  })
}

function lineFrom(line: RecipeInput['draws'][number], field: string): RecipeLine {
  return {
    productId: line.productId,
    bySize: bySize(size => {
      const { amount, spread } = line.bySize[size]
      const at = `${field}.bySize.${size}`
      return { centi: notNegative(amount, `${at}.amount`), sdCenti: notNegative(spread, `${at}.spread`) }
    }),
  }
}

function notNegative(amount: number, field: string): number {
  const centi = centiOf(amount, field)
  if (centi < 0)
    refuse(
      'amount-negative',
      { [field]: amount },
      say('A step cannot draw {amount}; give 0 or more.', { amount }),
    )
  return centi
}

/** Makes what steps really drew the recipe, in every treatment with this step; booked jobs follow. */
export async function learnRecipe(desk: Desk, input: LearnedInput): Promise<{ treatments: number }> {
  const centi = notNegative(input.amount, 'amount')
  const sdCenti = notNegative(input.spread, 'spread')
  return act(desk, async (tx, audit) => {
    await countedProduct(tx, input.productId)
    const named = await stepsOfWork(tx, input)
    // "Layer" may be laid of one product in one treatment and of another in the next: those with this product are meant.
    const own = named.filter(
      step =>
        step.productId === input.productId || recipeOf(step).some(line => line.productId === input.productId),
    )
    const steps = own.length > 0 ? own : named
    if (steps.length === 0)
      refuse(
        'missing',
        { stepName: input.stepName },
        say('No treatment has a step "{stepName}" any more; nothing was changed.', {
          stepName: input.stepName,
        }),
      )
    for (const step of steps) {
      const before = recipeOf(step)
      const old = before.find(line => line.productId === input.productId)
      const line: RecipeLine = {
        productId: input.productId,
        // A size nobody has written a recipe for yet begins with what this size has taught.
        bySize: bySize(size =>
          size === input.sizeClass ? { centi, sdCenti } : (old?.bySize[size] ?? { centi, sdCenti }),
        ),
      }
      const draws = old ? before.map(each => (each === old ? line : each)) : [...before, line]
      await tx.treatmentStep.update({ where: { id: step.id }, data: { draws: draws.map(toJson) } })
    }
    const ids = [...new Set(steps.map(step => step.treatmentId))]
    await tx.treatment.updateMany({ where: { id: { in: ids } }, data: { version: { increment: 1 } } })
    await writeStepDraws(tx, await openJobsWith(tx, ids, desk.now()), desk.now())
    for (const id of ids)
      audit({ act: 'recipe learned', entity: 'treatment', entityId: id, detail: { ...input } })
    return { treatments: ids.length }
  })
}

async function stepsOfWork(tx: Tx, work: { stage: string; stepName: string }) {
  const steps = await tx.treatmentStep.findMany({
    where: { stage: work.stage, treatment: { archivedAt: null } },
  })
  const key = workKey({ stage: work.stage, name: work.stepName })
  return steps.filter(step => workKey(step) === key)
}

/** A treatment's step that draws a product, with its recipe by size class. */
export type RecipeView = Awaited<ReturnType<typeof recipesWith>>[number]

/** The steps of the treatments sold that draw a product. */
export async function recipesWith(tx: Tx, productId: string) {
  const treatments = await tx.treatment.findMany({
    where: { archivedAt: null },
    orderBy: { position: 'asc' },
    include: { steps: { orderBy: { position: 'asc' } } },
  })
  return treatments.flatMap(treatment =>
    treatment.steps.flatMap(step => {
      const line = recipeOf(step).find(each => each.productId === productId)
      if (!line) return []
      return [
        {
          treatmentId: treatment.id,
          treatmentName: treatment.name,
          treatmentVersion: treatment.version,
          position: step.position,
          stage: step.stage,
          stepName: step.name,
          bySize: amountsOf(line),
        },
      ]
    }),
  )
}

export type TreatmentRecipesView = Awaited<ReturnType<typeof treatmentRecipes>>

/** The recipes of one treatment, as `shelf.saveRecipe` takes them step by step. */
export async function treatmentRecipes(desk: Desk, input: { treatmentId: string }) {
  const tx = desk.store.read
  const treatment = await tx.treatment.findUnique({
    where: { id: input.treatmentId },
    include: { steps: { orderBy: { position: 'asc' } } },
  })
  if (!treatment) refuse('missing', { treatmentId: input.treatmentId }, say('This treatment is not there.'))
  const products = await countedProducts(tx)
  return {
    treatmentId: treatment.id,
    version: treatment.version,
    steps: treatment.steps.map(step => ({
      position: step.position,
      stage: step.stage,
      stepName: step.name,
      draws: recipeOf(step).flatMap(line => {
        const product = products.get(line.productId)
        return product
          ? [
              {
                productId: line.productId,
                productName: product.name,
                unit: product.unit,
                bySize: amountsOf(line),
              },
            ]
          : []
      }),
    })),
  }
}

function amountsOf(line: RecipeLine) {
  return bySize(size => ({
    amount: unitsOf(line.bySize[size].centi),
    spread: unitsOf(line.bySize[size].sdCenti),
  }))
}
