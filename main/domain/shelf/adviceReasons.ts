import { decimalNow, say } from '../language/index.ts'
import type { Advice } from './advise.ts'
import type { Unit } from './amount.ts'
import { amountWords } from './amountWords.ts'
import type { Demand } from './demand.ts'
import type { ExpiryCap } from './expiryCap.ts'
import type { Level } from './level.ts'
import type { Policy } from './policy.ts'
import type { LeadTime } from './supplier.ts'
import { safetyStock as textbookSafety } from './textbook.ts'

export type ReasonCode =
  | 'position'
  | 'cover'
  | 'demand'
  | 'safety-stock'
  | 'textbook'
  | 'order-point'
  | 'lasts'
  | 'size'
  | 'price-break'
  | 'expiry-cap'
  | 'wait-by-dates'
  | 'beyond-expiry'
  | 'join'
  | 'no-history'

export interface Reason {
  readonly code: ReasonCode
  /** The numbers the sentence names, amounts in centi. */
  readonly values: Readonly<Record<string, number>>
  readonly text: string
}

export interface ReasonInput {
  readonly advice: Advice
  readonly plan: Policy | null
  readonly unit: Unit
  readonly packCenti: number
  readonly lead: LeadTime
  readonly demand: Demand
  readonly level: Level | null
  /** What steps begun or finished take off the shelf today and nobody has confirmed yet. */
  readonly dueTodayCenti: number
}

/** The reasons behind one product's advice, in the order a person would ask for them. */
export function adviceReasons(input: ReasonInput): Reason[] {
  const { advice, plan } = input
  const reasons = [position(input), cover(input)]
  if (plan === null)
    reasons.push({
      code: 'no-history',
      values: {},
      text: say('No use is on record yet: only booked jobs call for an order.'),
    })
  else reasons.push(demand(input), safetyStock(input), textbook(input), orderPoint(input, plan), lasts(input))
  const packs = advice.packs || advice.joinPacks
  if (packs > 0 && plan !== null) reasons.push(...size(input, plan, packs))
  if (advice.packs === 0 && advice.joinPacks > 0) reasons.push(join(input))
  if (advice.byDates && packs === 0 && advice.position.positionCenti < advice.orderPointCenti)
    reasons.push({
      code: 'wait-by-dates',
      values: { positionCenti: advice.position.positionCenti },
      text: say(
        'Less is left, but an order today would cost more than it saves: some of it would expire beside what is here.',
      ),
    })
  if (advice.cap !== null) reasons.push(expiryCap(advice.cap, input.unit))
  if (advice.beyondExpiry)
    reasons.push({
      code: 'beyond-expiry',
      values: { packs: advice.packs },
      text: say('Booked jobs need it, though the rest of a pack is expected to expire before it is used.'),
    })
  return reasons
}

function position({ advice, unit, dueTodayCenti }: ReasonInput): Reason {
  const { onHandCenti, underWayCenti, waitingCenti, bookedCenti, expiringCenti, positionCenti } =
    advice.position
  const amount = (centi: number) => amountWords(centi, unit, 0)
  const parts = [say('{onHandCenti} on the shelf', { onHandCenti: amount(onHandCenti + dueTodayCenti) })]
  if (dueTodayCenti > 0)
    parts.push(say('less {dueTodayCenti} for the steps of today', { dueTodayCenti: amount(dueTodayCenti) }))
  if (underWayCenti > 0)
    parts.push(say('plus {underWayCenti} under way', { underWayCenti: amount(underWayCenti) }))
  if (waitingCenti > 0)
    parts.push(say('less {waitingCenti} jobs wait for', { waitingCenti: amount(waitingCenti) }))
  if (bookedCenti > 0)
    parts.push(say('less {bookedCenti} booked until the next delivery', { bookedCenti: amount(bookedCenti) }))
  if (expiringCenti > 0)
    parts.push(say('less {expiringCenti} that will expire by then', { expiringCenti: amount(expiringCenti) }))
  return {
    code: 'position',
    values: { onHandCenti, underWayCenti, waitingCenti, bookedCenti, expiringCenti, positionCenti },
    text:
      positionCenti < 0
        ? say('{parts}: {short} short.', { parts: parts.join(', '), short: amount(-positionCenti) })
        : say('{parts}: {positionCenti} to meet what nobody has booked yet.', {
            parts: parts.join(', '),
            positionCenti: amount(positionCenti),
          }),
  }
}

function cover({ advice, lead }: ReasonInput): Reason {
  const days = advice.position.coverDays
  const { meanDays, sdDays } = lead
  return {
    code: 'cover',
    values: { coverDays: days, meanDays, sdDays },
    text:
      sdDays >= 0.5
        ? say(
            'The stock must last {days, plural, one {1 open day} other {{days} open days}}: the supplier takes {meanDays} working days, give or take {sdDays}.',
            { days, meanDays: number(meanDays), sdDays: number(sdDays) },
          )
        : say(
            'The shelf must last {days, plural, one {1 open day} other {{days} open days}}: the supplier takes {meanDays} working days.',
            { days, meanDays: number(meanDays) },
          ),
  }
}

function demand({ advice, unit, level }: ReasonInput): Reason {
  const week = advice.perDayCenti * 5
  const how = {
    mean: say('the plain mean of its past'),
    'croston-corrected': say('the estimate for use that comes now and then'),
    fading: say('the estimate for use that is fading'),
  }[level?.method ?? 'mean']
  return {
    code: 'demand',
    values: { perDayCenti: advice.perDayCenti, unforeseenCenti: advice.expectedUnforeseenCenti },
    text: say(
      'About {week} are used in five open days ({how}); until the next delivery {expectedUnforeseenCenti} of it is likely to come unbooked.',
      {
        week: amountWords(week, unit, 0),
        how,
        expectedUnforeseenCenti: amountWords(advice.expectedUnforeseenCenti, unit, 0),
      },
    ),
  }
}

function safetyStock({ advice, unit }: ReasonInput): Reason {
  const safety = advice.safetyStockCenti
  return {
    code: 'safety-stock',
    values: { safetyStockCenti: safety },
    text:
      safety > 0
        ? say('{safety} of safety stock stands against more use or a later delivery than expected.', {
            safety: amountWords(safety, unit, 0),
          })
        : say(
            'No safety stock is needed: an order lasts so long that the shelf is rarely low when a delivery is awaited.',
          ),
  }
}

function textbook({ advice, unit, lead, demand }: ReasonInput): Reason {
  const { safetyStock } = textbookSafety({
    demandPerDay: demand.perDayCenti,
    demandSd: Math.sqrt(demand.perDayVariance),
    leadDays: lead.meanDays,
    leadSd: lead.sdDays,
    serviceLevel: advice.targetService,
  })
  return {
    code: 'textbook',
    values: { safetyStockCenti: safetyStock },
    text: say(
      'For comparison: the textbook formula, which knows nothing of bookings or order sizes, would hold {safetyStock} in reserve.',
      { safetyStock: amountWords(safetyStock, unit, 0) },
    ),
  }
}

function orderPoint({ advice, unit }: ReasonInput, { best: { service } }: Policy): Reason {
  return {
    code: 'order-point',
    values: { orderPointCenti: advice.orderPointCenti, service, targetService: advice.targetService },
    text: say(
      'Ordering when less than {orderPointCenti} is left serves {service} of draws in the long run; you ask for {targetService}.',
      {
        orderPointCenti: amountWords(advice.orderPointCenti, unit, 0),
        service: percent(service),
        targetService: percent(advice.targetService),
      },
    ),
  }
}

function lasts({ advice }: ReasonInput): Reason {
  return {
    code: 'lasts',
    values: { lastsChance: advice.lastsChance },
    text: say(
      'Without an order today the shelf lasts until the next delivery in {lastsChance} of 100 cases.',
      { lastsChance: Math.floor(advice.lastsChance * 100) },
    ),
  }
}

function size({ advice, unit, packCenti }: ReasonInput, plan: Policy, packs: number): Reason[] {
  if (advice.byDates)
    return [
      {
        code: 'size',
        values: { packs, packCenti },
        text: say(
          '{packs, plural, one {1 pack} other {{packs} packs}} of {packCenti}: by the dates of what is here and the use to expect, that costs the least of carriage, stock and waste together.',
          { packs, packCenti: amountWords(packCenti, unit, 0) },
        ),
      },
    ]
  const { best, choices } = plan
  const one = choices.find(choice => choice.packs === 1)
  const reasons: Reason[] = [
    {
      code: 'size',
      values: { packs, packCenti, planPacks: best.packs, costPerDay: best.costPerDay },
      text: say(
        '{packs, plural, one {1 pack} other {{packs} packs}} of {packCenti}: orders of {packs2} are the cheapest of carriage, stock and waste together.',
        { packs, packCenti: amountWords(packCenti, unit, 0), packs2: best.packs },
      ),
    },
  ]
  if (one && one.priceCost > best.priceCost + 1e-6)
    reasons.push({
      code: 'price-break',
      values: { packs: best.packs, savedPerDay: one.priceCost - best.priceCost },
      text: say('From {packs} packs on the price is lower than for single ones, and that is counted in.', {
        packs: best.packs,
      }),
    })
  return reasons
}

function join({ advice }: ReasonInput): Reason {
  return {
    code: 'join',
    values: { packs: advice.joinPacks, daysToPoint: advice.daysToPoint ?? 0 },
    text: say(
      'It would be due in about {days, plural, one {1 open day} other {{days} open days}}; joining an order that goes out anyway costs less than a parcel of its own.',
      { days: Math.ceil(advice.daysToPoint ?? 0) },
    ),
  }
}

function expiryCap({ packs, usedByThenCenti }: ExpiryCap, unit: Unit): Reason {
  return {
    code: 'expiry-cap',
    values: { packs, usedByThenCenti },
    text: say(
      'No more than {packs, plural, one {1 pack} other {{packs} packs}}: about {usedByThenCenti} will be used before new goods expire, and what is here goes first.',
      { packs, usedByThenCenti: amountWords(usedByThenCenti, unit, 0) },
    ),
  }
}

function number(n: number): string {
  return decimalNow(Number(n.toFixed(1)))
}

function percent(share: number): string {
  return `${number(share * 100)} %`
}
