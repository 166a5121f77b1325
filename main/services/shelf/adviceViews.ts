import { say } from '../../domain/language/index.ts'
import {
  adviceReasons,
  amountWords,
  type OrderLine,
  packPriceMinor,
  type Reason,
  unitsOf,
} from '../../domain/shelf/index.ts'
import type { ProductAhead } from './ahead.ts'
import type { Counted } from './countedProducts.ts'
import type { Buying } from './underWay.ts'

/** Points of the curve of unforeseen use: enough for a chart. */
const curvePoints = 40

export interface AdviceView extends ReturnType<typeof nothingOf> {
  /** `check`: nothing can be advised before somebody has looked (no supplier, no history, a count in doubt). */
  kind: 'order' | 'enough' | 'onTheWay' | 'check'
  /** Why, in sentences; the first one says it all. */
  words: string[]
  facts: AdviceFacts | null
}

/** The numbers behind an advice; each has its sentence. */
export type AdviceFacts = NonNullable<ReturnType<typeof factsOf>>

/** One size of order and what it costs a day in the long run: a bar of the chart behind the advice. */
export type OrderSizeView = ReturnType<typeof sizesOf>[number]

/**
 * What to do about a product, with every number explained. `line` is its line of today's proposed order, which may
 * hold packs it would not ask for by itself: it joins, or fills up the supplier's minimum.
 */
export function adviceView(of: ProductAhead, line: OrderLine | null): AdviceView {
  const { product, buying, advice, waitingCenti, projection } = of
  if (waitingCenti > 0)
    return {
      ...nothingOf(of),
      kind: 'check',
      words: [
        say(
          'Finished steps used {waitingCenti} more of {name} than the ledger knows of: confirm them, and count the bottle.',
          { waitingCenti: amountWords(waitingCenti, product.unit), name: product.name },
        ),
        ...reasonsOf(of).map(reason => reason.text),
      ],
      facts: factsOf(of),
    }
  if (of.madeHere)
    return {
      ...nothingOf(of),
      kind: 'enough',
      words: [
        say('{name} is mixed here: what bookings lack of it is counted on its concentrate.', {
          name: product.name,
        }),
      ],
      facts: null,
    }
  if (!of.everReceived && of.deliveries.length === 0 && !line)
    return {
      ...nothingOf(of),
      kind: 'check',
      words: [
        say(
          'Nothing of {name} has been counted yet: receive what stands on the shelf, and it can be looked ahead.',
          { name: product.name },
        ),
      ],
      facts: factsOf(of),
    }
  if (!buying || !advice) {
    const worry = projection.dry !== null || projection.dryEarly !== null
    return {
      ...nothingOf(of),
      kind: worry ? 'check' : 'enough',
      words: [
        worry
          ? say('{name} may run dry and nobody sells it to you yet: enter a supplier on its page.', {
              name: product.name,
            })
          : say('{name} lasts over the days looked at. No supplier is entered for it.', {
              name: product.name,
            }),
      ],
      facts: null,
    }
  }
  const packs = line?.packs ?? 0
  const reasons = reasonsOf(of).map(reason => reason.text)
  const { packCenti, breaks } = buying.offer
  const base = {
    ...nothingOf(of),
    packs,
    amount: unitsOf(packs * packCenti),
    costMinor: packs * packPriceMinor(breaks, Math.max(1, packs)),
    facts: factsOf(of),
  }
  if (line && packs > 0)
    return { ...base, kind: 'order', words: [orderWords(product, buying, line), ...reasons] }
  const underWay = of.deliveries.reduce((sum, each) => sum + each.centi, 0)
  const without = advice.position.positionCenti - underWay
  const waits = underWay > 0 && without < Math.max(1, advice.orderPointCenti)
  return {
    ...base,
    kind: waits ? 'onTheWay' : 'enough',
    words: [
      waits
        ? say('{underWay} of {name} are under way: nothing more to order today.', {
            underWay: amountWords(underWay, product.unit, 0),
            name: product.name,
          })
        : say('There is enough {name}: nothing to order today.', { name: product.name }),
      ...reasons,
    ],
  }
}

function nothingOf({ buying }: ProductAhead) {
  return {
    packs: 0,
    amount: 0,
    costMinor: 0,
    supplierId: buying?.supplier.id ?? null,
    supplierName: buying?.supplier.name ?? null,
    offerId: buying?.offer.id ?? null,
  }
}

function orderWords(product: Counted, { offer }: Buying, { packs, reason }: OrderLine): string {
  const amount = amountWords(packs * offer.packCenti, product.unit, 0)
  const why = {
    'below-point': say('after the booked jobs, what is left may not last until the next delivery'),
    bookings: say('booked jobs need it'),
    joins: say('an order goes to this supplier anyway, and it is due soon'),
    minimum: say("it fills up the supplier's minimum order and is due next"),
  }[reason]
  return say('Order {packs} {packs, plural, one {pack} other {packs}} ({amount}) of {name} today: {why}.', {
    packs,
    amount,
    name: product.name,
    why,
  })
}

function reasonsOf({ advice, plan, product, buying, outlook, dueTodayCenti }: ProductAhead): Reason[] {
  if (!advice || !buying) return []
  return adviceReasons({
    advice,
    plan,
    unit: product.unit,
    packCenti: buying.offer.packCenti,
    lead: buying.lead,
    demand: outlook.demand,
    level: outlook.level,
    dueTodayCenti,
  })
}

function factsOf(of: ProductAhead) {
  const { advice, buying, plan, product } = of
  if (!advice || !buying) return null
  const { position } = advice
  const amount = (centi: number) => unitsOf(Math.round(centi))
  return {
    /** Usable, by the bottles. */
    onHand: amount(position.onHandCenti + of.dueTodayCenti),
    /** What steps begun or finished take of it and nobody has confirmed yet. */
    dueToday: amount(of.dueTodayCenti),
    underWay: amount(position.underWayCenti),
    booked: amount(position.bookedCenti),
    expiring: amount(position.expiringCenti),
    /** What is left for unforeseen use until the next delivery could be here. */
    position: amount(position.positionCenti),
    orderPoint: amount(advice.orderPointCenti),
    safetyStock: amount(advice.safetyStockCenti),
    expectedUnforeseen: amount(advice.expectedUnforeseenCenti),
    usePerDay: amount(advice.perDayCenti),
    /** Open days until an order placed at the next chance serves. */
    coverDays: position.coverDays,
    service: advice.targetService,
    reached: plan?.best.service ?? 1,
    packAmount: unitsOf(buying.offer.packCenti),
    packPriceMinor: packPriceMinor(buying.offer.breaks, Math.max(1, advice.packs)),
    sentences: reasonsOf(of).map(({ code, values, text }) => ({
      name: code,
      value: valueWords(Object.entries(values)[0], product.unit),
      words: text,
    })),
    sizes: plan ? sizesOf(plan) : [],
    /** Chance that unforeseen use until the next delivery is at most this much: the curve behind the order point. */
    within: plan ? curveOf(plan) : [],
  }
}

/** The number a reason is about: amounts end in Centi, the rest are plain. */
function valueWords(entry: [string, number] | undefined, unit: 'ml' | 'g' | 'piece'): string {
  if (!entry) return ''
  const [name, value] = entry
  if (name.endsWith('Centi')) return amountWords(Math.round(value), unit, 0)
  if (name.endsWith('Chance') || name === 'service') return `${Math.floor(value * 100)} %`
  return String(Number(value.toFixed(1)))
}

function sizesOf(plan: NonNullable<ProductAhead['plan']>) {
  const round = (cost: number) => Math.round(cost * 100) / 100
  return plan.choices.map(choice => ({
    packs: choice.packs,
    orderPoint: unitsOf(Math.round(choice.orderPointCenti)),
    orderCostMinor: round(choice.orderCost),
    holdCostMinor: round(choice.holdCost),
    wasteCostMinor: round(choice.wasteCost),
    priceCostMinor: round(choice.priceCost),
    totalMinor: round(choice.costPerDay),
    best: choice.packs === plan.best.packs,
  }))
}

function curveOf({ within, stepCenti }: NonNullable<ProductAhead['plan']>) {
  const end = within.findIndex(share => share > 0.9995)
  const last = end < 0 ? within.length - 1 : end
  const every = Math.max(1, Math.ceil(last / curvePoints))
  const points: { amount: number; share: number }[] = []
  for (let k = 0; k <= last; k += every)
    points.push({
      amount: unitsOf(Math.round(k * stepCenti)),
      share: Math.round((within[k] ?? 0) * 1e4) / 1e4,
    })
  return points
}
