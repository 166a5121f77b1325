import { type CureProfile, checkProfile } from '../../domain/cure/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { checkText, checkUnique, type ProductKind } from '../../domain/shop/index.ts'
import { type JsonObject, noJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { momentWords } from '../desk/momentWords.ts'
import { shopOf } from '../desk/shopView.ts'
import { assertTold, comingJobs, jobWords, listed } from '../floor/comingJobs.ts'
import { checkUsers } from './treatmentCheck.ts'

export interface ProductView {
  id: string
  name: string
  kind: ProductKind
  /** Null for what does not cure. */
  cureProfile: CureProfile | null
  /** The treatments that use it. */
  usedIn: { id: string; name: string }[]
  archivedAt: number | null
  version: number
}

/** The products by kind and name; archived ones only when asked for. */
export async function listProducts(
  desk: Desk,
  input?: { archived?: boolean | undefined },
): Promise<ProductView[]> {
  const rows = await desk.store.read.product.findMany({
    where: input?.archived ? {} : { archivedAt: null },
    orderBy: [{ archivedAt: { sort: 'asc', nulls: 'first' } }, { kind: 'asc' }, { name: 'asc' }],
    include: {
      steps: {
        where: { treatment: { archivedAt: null } },
        select: { treatment: { select: { id: true, name: true } } },
      },
    },
  })
  return rows.map(({ steps, ...product }) => ({
    ...product,
    kind: product.kind as ProductKind,
    cureProfile: product.cureProfile as unknown as CureProfile | null,
    usedIn: [...new Map(steps.map(({ treatment }) => [treatment.id, treatment])).values()],
  }))
}

export interface ProductInput {
  id?: string | undefined
  version?: number | undefined
  name: string
  kind: ProductKind
  cureProfile: CureProfile | null
  accepted?: boolean | undefined
}

/** Whether a kind of product cures on the car, and so needs a profile. */
export function cures(kind: ProductKind): boolean {
  return kind === 'coating' || kind === 'topper'
}

/**
 * Adds a product, or changes one. A changed cure profile is refused until `accepted` where booked cars are planned by the
 * old one: their times follow the new one from then on.
 */
export async function saveProduct(desk: Desk, input: ProductInput): Promise<{ id: string }> {
  const data = checkProduct(input)
  const written = { ...data, cureProfile: data.cureProfile ?? noJson }
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const others = await tx.product.findMany({ where: { archivedAt: null, NOT: { id: input.id ?? '' } } })
    checkUnique([...others.map(product => product.name), data.name], () => 'name', 'a product')
    if (input.id === undefined) {
      const { id } = await tx.product.create({ data: written })
      audit({ act: 'added', entity: 'product', entityId: id, detail: data })
      return { id }
    }
    const { id } = input
    const before = await tx.product.findUnique({ where: { id } })
    const { count } = await tx.product.updateMany({
      where: { id, version: input.version ?? 0 },
      data: { ...written, version: { increment: 1 } },
    })
    assertFresh(count, 'product', id)
    const changes = changesBetween(before!, data)
    if ('kind' in changes) await assertUnused(tx, id, 'kind', 'its kind stays')
    if ('cureProfile' in changes) {
      await checkUsers(tx, id, 'cureProfile')
      assertTold(
        await cureLines(tx, id, desk.now()),
        input.accepted,
        'cureProfile',
        `These booked cars are planned by the present figures of ${data.name}; look at them on the board afterwards:`,
      )
    }
    audit({ act: 'changed', entity: 'product', entityId: id, detail: changes })
    return { id }
  })
}

/** Puts a product away. Refused while a treatment uses it, which it names. */
export async function archiveProduct(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    await assertUnused(tx, input.id, 'id', 'it cannot be put away')
    const { count } = await tx.product.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: desk.now(), version: { increment: 1 } },
    })
    assertFresh(count, 'product', input.id)
    audit({ act: 'archived', entity: 'product', entityId: input.id })
  })
}

/** Takes an archived product back into use. */
export async function restoreProduct(desk: Desk, input: { id: string; version: number }): Promise<void> {
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const product = await tx.product.findUnique({ where: { id: input.id } })
    const used = await tx.product.findMany({ where: { archivedAt: null } })
    if (product) checkUnique([...used.map(each => each.name), product.name], () => 'name', 'a product')
    const { count } = await tx.product.updateMany({
      where: { ...input, NOT: { archivedAt: null } },
      data: { archivedAt: null, version: { increment: 1 } },
    })
    assertFresh(count, 'product', input.id)
    audit({ act: 'restored', entity: 'product', entityId: input.id })
  })
}

function checkProduct({ name, kind, cureProfile }: ProductInput) {
  const kept = checkText(name, 'name', "The product's name")
  if (!cures(kind)) {
    if (cureProfile)
      throw new Refusal(
        'profile-useless',
        'cureProfile',
        kind,
        `A ${kind} does not cure on the car; leave its profile out, or choose coating or topper.`,
      )
    return { name: kept, kind, cureProfile: null }
  }
  if (!cureProfile)
    throw new Refusal(
      'profile-missing',
      'cureProfile',
      kind,
      `A ${kind} needs its cure profile: take the figures from the data sheet, or begin with common practice.`,
    )
  try {
    checkProfile(cureProfile)
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    throw new Refusal(error.code, `cureProfile.${error.field}`, error.value, error.message)
  }
  return { name: kept, kind, cureProfile: { ...cureProfile } as unknown as JsonObject }
}

async function assertUnused(tx: Tx, productId: string, field: string, consequence: string): Promise<void> {
  const treatments = await tx.treatment.findMany({
    where: { archivedAt: null, steps: { some: { productId } } },
    select: { name: true },
  })
  if (treatments.length > 0)
    throw new Refusal(
      'product-used',
      field,
      productId,
      listed(
        `These treatments use it, so ${consequence}; choose another product there first:`,
        treatments.map(each => each.name),
      ),
    )
}

/** A line for each coming job in which the product is still to cure. */
async function cureLines(tx: Tx, productId: string, nowAt: number): Promise<string[]> {
  const { zone } = await shopOf(tx)
  return (await comingJobs(tx, nowAt))
    .filter(job => job.steps.some(step => step.productId === productId))
    .map(job => `${jobWords(job)}: handover ${momentWords(job.handoverAt, zone)}`)
}
