import { type CureProfile, checkProfile } from '../../domain/cure/index.ts'
import { say } from '../../domain/language/index.ts'
import type { UnitSystem } from '../../domain/measure/index.ts'
import { refuse, withField } from '../../domain/refusal.ts'
import { type CoatingFamily, checkText, type PanelFinish, type ProductKind } from '../../domain/shop/index.ts'
import { fromJson, noJson, toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst, listed } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { ListInput, RowAccepted } from '../desk/inputs.ts'
import { archiveRow, assertNameFree, type RowSeen, restoreRow, rowsShown, saveRow } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import { comingJobs, handoverLines } from '../floor/comingJobs.ts'
import { containerLines, openOrderLines } from '../shelf/stillUsed.ts'
import type { ProductInput } from './inputs.ts'
import { checkUsers } from './treatmentCheck.ts'

export type ProductView = Awaited<ReturnType<typeof listProducts>>[number]

const products = (tx: Tx) => ({ table: tx.product, entity: 'product' })

/** The products by kind and name; archived ones only when asked for. */
export async function listProducts(desk: Desk, input?: ListInput) {
  const rows = await desk.store.read.product.findMany({
    ...rowsShown(input, { kind: 'asc' }, { name: 'asc' }),
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
    family: product.family as CoatingFamily,
    finishes: fromJson<PanelFinish[] | null>(product.finishes),
    cureProfile: fromJson<CureProfile | null>(product.cureProfile),
    /** The treatments that use it. */
    usedIn: [...new Map(steps.map(({ treatment }) => [treatment.id, treatment])).values()],
  }))
}

/** Whether a kind of product cures on the car, and so needs a profile. */
export function cures(kind: ProductKind): boolean {
  return kind === 'coating' || kind === 'topper'
}

/**
 * Adds a product, or changes one. A changed cure profile is refused until `accepted` where booked cars are planned by the
 * old one: their times follow the new one from then on.
 */
export function saveProduct(desk: Desk, input: ProductInput): Promise<{ id: string }> {
  return act(desk, async (tx, audit, at) => {
    const { finishes } = input
    const data = {
      ...checkProduct(input, (await shopOf(tx)).units),
      finishes: finishes && finishes.length > 0 ? [...finishes] : noJson,
    }
    await assertNameFree(tx.product, { id: input.id, name: data.name }, say('a product'))
    const { id, before, changes } = await saveRow(audit, products(tx), input, { data })
    if (before && 'kind' in changes)
      await assertUnused(
        tx,
        { kind: id },
        say('These treatments use it, so its kind stays; choose another product there first:'),
      )
    if (before && 'cureProfile' in changes) {
      await checkUsers(tx, id, 'cureProfile')
      askFirst('touches-bookings', await handoverLines(tx, await comingJobs(tx, at, curing(id))), {
        field: 'cureProfile',
        lead: say(
          'These booked cars are planned by the present figures of {name}; look at them on the board afterwards:',
          { name: data.name },
        ),
        accepted: input.accepted,
      })
    }
    return { id }
  })
}

/**
 * Puts a product away. Refused while a treatment uses it, which it names; asked about while booked cars are still to get
 * it, or some of it is on the shelf or on its way.
 */
export function archiveProduct(desk: Desk, input: RowAccepted): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const { id } = input
    await assertUnused(
      tx,
      { id },
      say('These treatments use it, so it cannot be put away; choose another product there first:'),
    )
    askFirst('in-use', await usesOf(tx, id, at), {
      field: 'id',
      lead: say('It is still in use:'),
      accepted: input.accepted,
    })
    await archiveRow(audit, products(tx), input, { at })
  })
}

/** Takes an archived product back into use. */
export function restoreProduct(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    await restoreRow(audit, products(tx), input)
    const product = await tx.product.findUniqueOrThrow({ where: { id: input.id } })
    await assertNameFree(tx.product, product, say('a product'))
  })
}

function checkProduct({ name, kind, family = 'paint', cureProfile }: ProductInput, units: UnitSystem) {
  const kept = checkText(name, 'name', say("The product's name"))
  if (!cures(kind)) {
    if (cureProfile)
      refuse(
        'profile-useless',
        { cureProfile },
        say('A {kind} does not cure on the car; leave its profile out, or choose coating or topper.', {
          kind: say(kind),
        }),
      )
    return { name: kept, kind, family, cureProfile: noJson }
  }
  if (!cureProfile)
    refuse(
      'profile-missing',
      { cureProfile },
      say(
        'A {kind} needs its cure profile: take the figures from the data sheet, or begin with common practice.',
        { kind: say(kind) },
      ),
    )
  try {
    checkProfile(cureProfile, units)
  } catch (error) {
    throw withField(error, field => `cureProfile.${field}`)
  }
  return { name: kept, kind, family, cureProfile: toJson(cureProfile) }
}

/** The jobs in which the product is still to be used or to cure. */
const curing = (productId: string) => ({ steps: { some: { productId } } })

/** What still rests on the product, a line each. */
async function usesOf(tx: Tx, productId: string, at: number): Promise<string[]> {
  const jobs = await comingJobs(tx, at, curing(productId))
  return [
    ...(await handoverLines(tx, jobs)),
    ...(await containerLines(tx, productId)),
    ...(await openOrderLines(tx, { productId })),
  ]
}

async function assertUnused(tx: Tx, named: { id: string } | { kind: string }, lead: string): Promise<void> {
  const productId = 'id' in named ? named.id : named.kind
  const treatments = await tx.treatment.findMany({
    where: { archivedAt: null, steps: { some: { productId } } },
    select: { name: true },
  })
  if (treatments.length > 0)
    refuse(
      'product-used',
      named,
      listed(
        lead,
        treatments.map(each => each.name),
      ),
    )
}
