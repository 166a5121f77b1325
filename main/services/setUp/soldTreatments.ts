import { dateOf } from '../../domain/calendar/index.ts'
import type { Leaving } from '../../domain/cure/index.ts'
import { type CuringProduct, leavingOf, type ProductsById } from '../../domain/floor/index.ts'
import { decimalNow, say } from '../../domain/language/index.ts'
import { percentOfMinor, type SharedWork, sharedOnce } from '../../domain/money/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import {
  type CarCheck,
  type CarOver,
  type CoatingFamily,
  type Condition,
  carChecksOf,
  checkText,
  type Finish,
  laidOver,
  leftOutWords,
  overWords,
  type PanelFinish,
  type ProductKind,
  type Scope,
  type SizeClass,
} from '../../domain/shop/index.ts'
import {
  assertOneCoating,
  conditionPercent,
  type Laid,
  type LayOutInput,
  layOut,
  partOf,
  priceShare,
  sharedSteps,
} from '../../domain/treatment/index.ts'
import { listWords } from '../../domain/words.ts'
import { fromJson } from '../../store/json.ts'
import { keptUntilSaved } from '../../store/kept.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import { learnedStretch, workOf } from '../effort/stretch.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { cautionFrom } from '../shelf/safetyView.ts'
import { rulesOf } from '../shelf/shelfRules.ts'
import { treatmentOf, withSteps } from './treatmentCheck.ts'

export interface Wish {
  treatmentIds: readonly string[]
  sizeClass: SizeClass
  finish: Finish
  condition: Condition
  /** Who has confirmed covered transport and storage; empty or left out: the car stays until it may get wet. */
  coveredBy?: string | undefined
  /** Left out: the whole car, alike all over. */
  over?: Pick<CarOver, 'panels' | 'scope'> & { nowAt: number }
}

export interface Sold extends Laid {
  /** In the shop's order, whatever order they were picked in. */
  readonly treatments: {
    id: string
    name: string
    priceMinor: number
    scope: Scope
    share: number
    leftOut: string
  }[]
  /** What is done once for several of them, and so may be charged once. */
  readonly shared: SharedWork[]
  /** What is ticked off around the work. */
  readonly checks: CarCheck[]
  readonly products: ProductsById
  /** What hands-on minutes were multiplied with, as learned; 1: as written. */
  readonly stretch: number
  readonly coveredBy: string | null
  readonly leaving: Leaving
}

/** The name that stands for the cover; null: nobody has confirmed any. */
function coverOf({ coveredBy }: Pick<Wish, 'coveredBy'>): string | null {
  return coveredBy?.trim() ? checkText(coveredBy, 'coveredBy', say('The name of who confirmed it'), 80) : null
}

/**
 * What is wished for, laid out for this vehicle and priced for its size.
 * @throws Refusal with the field `treatmentIds` where it cannot be: not sold any more, two that coat the same thing,
 * never done on this finish, waits that cannot be kept.
 */
export const sell = keptUntilSaved(readSold, (wish: Wish) => JSON.stringify(wish))

async function readSold(tx: Tx, wish: Wish): Promise<Sold> {
  const shop = await shopOf(tx)
  const coveredBy = coverOf(wish)
  const leaving = leavingOf({ coveredBy })
  const ids = [...new Set(wish.treatmentIds)]
  const rows = await tx.treatment.findMany({
    where: { id: { in: ids } },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    include: withSteps,
  })
  const gone = ids.find(id => rows.find(row => row.id === id)?.archivedAt !== null)
  if (gone !== undefined) {
    const name = rows.find(row => row.id === gone)?.name
    const words =
      name === undefined
        ? say('One of the treatments is not sold any more; choose another.')
        : say('{name} is not sold any more; choose another.', { name })
    throw new Refusal('treatment-gone', 'treatmentIds', gone, words)
  }
  const productIds = rows.flatMap(row => row.steps.flatMap(step => step.productId ?? []))
  const products = await productsById(tx, productIds)
  try {
    const templates = rows.map(treatmentOf)
    assertOneCoating(templates, products)
    const { panels, scope, nowAt } = wish.over ?? { panels: [], scope: 'whole', nowAt: 0 }
    const car = { finish: wish.finish, panels, scope, today: dateOf(nowAt, shop.zone) }
    const over = templates.map(template => laidOver(template, products, car))
    const bare = over.findIndex(each => each.share === 0)
    const parts = templates.map((template, i) => partOf(template, over[i]?.share || 1))
    const asked: LayOutInput = {
      ...wish,
      // What may not be done on a panel is left out there, so the finish of the car stands for no treatment but a bare one.
      finish: bare < 0 ? 'gloss' : wish.finish,
      treatments: parts,
      products,
      conditionFactors: shop.conditionFactors,
      gridMin: shop.gridMin,
      handoverRule: shop.handoverRule,
      leaving,
    }
    const written = layOut(asked)
    const learned = await learnedStretch(tx, { ...wish, ...workOf(written.steps, over) })
    const laid = learned ? layOut({ ...asked, stretch: learned.stretch }) : written
    if (bare >= 0)
      refuse(
        'no-panel',
        { treatmentIds: templates[bare]?.name },
        say(
          '"{name}" may touch no panel asked for: {leftOut}. Leave it out, or correct what is noted of the car or allowed to the product.',
          { name: templates[bare]?.name, leftOut: leftOutWords(over[bare]?.leftOut.join(', ') ?? '') },
        ),
      )
    const rules = await moneyRules(tx)
    const morePercents = templates.map(template => conditionPercent(template, wish.condition, rules))
    const treatments = rows.map(({ id, name, prices }, i) => {
      const { share = 1, leftOut = [] } = over[i] ?? {}
      const whole = (prices as Record<SizeClass, number>)[wish.sizeClass]
      const template = templates[i]
      const part = template ? priceShare(template, share, wish.sizeClass) : share
      const plainMinor = Math.round(whole * part)
      const priceMinor = plainMinor + percentOfMinor(plainMinor, morePercents[i]!)
      return { id, name, priceMinor, scope, share, leftOut: leftOut.join(', ') }
    })
    const shared = sharedOnce(treatments, sharedSteps(parts, wish.sizeClass))
    const notes = [
      ...templates.flatMap(({ name }, i) => overWords(name, scope, over[i]!)),
      ...dearerWords(
        treatments.filter((_, i) => Number(morePercents[i]) > 0).map(({ name }) => name),
        wish.condition,
        morePercents.find(percent => Number(percent) > 0),
      ),
      ...(learned?.words ?? []),
      ...laid.notes,
    ]
    return {
      ...laid,
      notes,
      treatments,
      shared,
      checks: carChecksOf(templates),
      products,
      stretch: learned?.stretch ?? 1,
      coveredBy,
      leaving,
    }
  } catch (error) {
    // The desk chose treatments, not steps: that is where the words belong.
    if (error instanceof Refusal) throw new Refusal(error.code, 'treatmentIds', error.value, error.message)
    throw error
  }
}

/** That paint in this condition costs more, and which treatments it makes dearer. */
function dearerWords(names: readonly string[], condition: Condition, percent = '0'): string[] {
  if (names.length === 0) return []
  return [
    say(
      '{condition, select, worn {Worn paint} other {Heavily worn paint}} costs {percent} % more, for {names}.',
      { condition, percent: decimalNow(Number(percent)), names: listWords(names) },
    ),
  ]
}

/** A product of what is sold: how it cures, and what it is for. */
interface SoldProduct extends CuringProduct {
  readonly family: CoatingFamily
  readonly finishes: readonly PanelFinish[] | null
}

/** Products by id, archived ones too: what a booked job uses stays known. */
export async function productsById(
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, SoldProduct>> {
  const rows = await tx.product.findMany({
    where: { id: { in: [...new Set(ids)] } },
    include: { safety: true },
  })
  const regime = rows.some(row => row.safety) ? (await rulesOf(tx)).regimeUsed : 'un-ghs'
  return new Map(
    rows.map(({ id, name, kind, family, finishes, cureProfile, safety }) => [
      id,
      {
        id,
        name,
        kind: kind as ProductKind,
        family: family as CoatingFamily,
        finishes: fromJson<PanelFinish[] | null>(finishes),
        cureProfile: fromJson<CuringProduct['cureProfile']>(cureProfile),
        caution: safety ? cautionFrom(name, safety, regime) : null,
      },
    ]),
  )
}
