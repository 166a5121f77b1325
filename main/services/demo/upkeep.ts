/** The demo's upkeep as rows: layers and looks, plans with what was done under them, consent, and past reminders. */
import { addDays, dateOf } from '../../domain/calendar/index.ts'
import {
  horizontalPanels,
  messageId,
  type Outcome,
  STARTING_FACTORS,
  scaleInterval,
  topperRule,
} from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import type { DemoVehicle } from './customerData.ts'
import { demoCustomers } from './customerData.ts'
import type { Happened } from './happen.ts'
import { demoShop } from './shopData.ts'
import { type DemoLife, demoConsent, demoLives } from './upkeepData.ts'

/** Who entered what was carried over from the shop's old cards. */
const who = 'front desk'

/** Writes what upkeep knows of the demo's cars as of now. */
export async function writeUpkeep(
  tx: Tx,
  vehicles: readonly DemoVehicle[],
  happened: readonly Happened[],
  nowAt: number,
): Promise<void> {
  const today = dateOf(nowAt, demoShop.zone)
  const lives = demoLives(vehicles, today)
  await tx.layer.createMany({ data: lives.flatMap(life => life.layers) })
  await tx.vehicleExposure.createMany({
    data: lives.map(({ vehicle, exposure }) => ({ vehicleId: vehicle.id, choices: exposure })),
  })
  await tx.inspection.createMany({ data: lives.flatMap(life => lookRows(life, nowAt)) })
  await tx.upkeepPlan.createMany({ data: lives.flatMap(life => planRows(life, nowAt)) })
  await tx.upkeepEntry.createMany({ data: lives.flatMap(life => doneRows(life, nowAt)) })
  await writeConsents(tx, nowAt)
  await writePastReminders(tx, lives, happened, nowAt)
}

function lookRows({ looks, exposure }: DemoLife, at: number) {
  const { multiplier } = scaleInterval(365, exposure, STARTING_FACTORS)
  const seen = (working: boolean) =>
    horizontalPanels.map(panel => ({
      panel,
      before: working ? 'weak' : 'none',
      after: working ? 'strong' : 'none',
    }))
  return looks.map(look => ({
    ...look,
    panels: seen(look.working),
    secondLook: true,
    exposure: multiplier,
    at,
    who,
  }))
}

function planId(life: DemoLife, kind: 'topper' | 'inspection'): string {
  return `demo-plan-${life.vehicle.id.slice(-2)}.${kind}`
}

/** The car's topper and yearly inspection, counted from its coating; what was done since follows as entries. */
function planRows(life: DemoLife, createdAt: number) {
  const coat = life.layers[0]!
  const base = {
    vehicleId: life.vehicle.id,
    anchorTo: 'last-done',
    anchorOn: coat.laidOn,
    anchorEvent: 'the coating',
    createdAt,
  }
  return [
    {
      ...base,
      id: planId(life, 'topper'),
      kind: 'topper',
      title: 'topper renewal',
      rule: topperRule(life.topperDays),
      earlyDays: 21,
      lateDays: 7,
      productId: life.layers.at(-1)!.productId,
    },
    {
      ...base,
      id: planId(life, 'inspection'),
      kind: 'inspection',
      title: 'yearly inspection',
      rule: 'FREQ=YEARLY',
      earlyDays: 30,
      lateDays: 30,
      productId: null,
    },
  ]
}

/** Every topper laid was a renewal done, and every second one came with the yearly look. */
function doneRows(life: DemoLife, at: number) {
  const done = (kind: 'topper' | 'inspection', onDay: string) => ({
    actId: `${planId(life, kind)}.${onDay}`,
    vehicleId: life.vehicle.id,
    planId: planId(life, kind),
    what: 'done',
    ruleOn: null,
    onDay,
    at,
    who,
  })
  const renewed = life.layers.slice(1)
  return [
    ...renewed.map(layer => done('topper', layer.laidOn)),
    ...renewed.flatMap((layer, i) => (i % 2 === 1 ? [done('inspection', layer.laidOn)] : [])),
  ]
}

async function writeConsents(tx: Tx, nowAt: number): Promise<void> {
  const wording = 'I agree to be reminded when my car is due for upkeep. I can take this back at any time.'
  await tx.consent.createMany({
    data: demoCustomers.flatMap(({ id: customerId, email }, n) => {
      const { channels, withdrawn } = demoConsent(n)
      const at = addDays(nowAt, -400 + n, demoShop.zone)
      const given = channels.map(channel => ({
        id: `demo-consent-${n}-${channel}`,
        customerId,
        channel,
        what: 'given',
        at,
        address: channel === 'email' ? email : null,
        source: 'intake form',
        wording,
        who,
      }))
      if (!withdrawn) return given
      const taken = {
        id: `demo-consent-${n}-taken-back`,
        customerId,
        channel: 'all',
        what: 'withdrawn',
        at: addDays(nowAt, -20, demoShop.zone),
        address: null,
        source: 'telephone',
        wording: 'Rather not, thank you.',
        who,
      }
      return [...given, taken]
    }),
  })
  await tx.ownerReach.createMany({
    data: demoCustomers.flatMap(({ id: customerId }, n) =>
      demoConsent(n).channels.includes('letter')
        ? [{ customerId, postal: `${n + 3} Osier Row\nHarrowmere`, language: n % 4 === 2 ? 'de' : null }]
        : [],
    ),
  })
}

const outcomes: (Outcome | null)[] = ['booked', null, 'booked', 'later', null, 'booked', 'no', 'unreachable']

/**
 * Reminders of renewals that were done since: each went out before its visit. Of cars that were here these days, the
 * visit is booked as the job they came for.
 */
async function writePastReminders(
  tx: Tx,
  lives: readonly DemoLife[],
  happened: readonly Happened[],
  nowAt: number,
): Promise<void> {
  const jobs = new Map(happened.map(({ job, vehicle }) => [vehicle.id, job]))
  const messages = []
  const entries = []
  for (const [n, life] of lives.entries()) {
    const { channels, withdrawn } = demoConsent(Number(life.vehicle.customerId.slice(-2)) - 1)
    const channel = channels[0]
    const laid = life.layers.at(-1)!
    if (channel === undefined || withdrawn) continue
    const job = jobs.get(life.vehicle.id)
    const came = job && ['inShop', 'handedOver', 'booked'].includes(job.status) ? job : null
    const outcome: Outcome | null = came ? 'booked' : (outcomes[n % outcomes.length] ?? null)
    const id = planId(life, 'topper')
    // Of a car that was here these days its open visit, of the others the renewal before.
    const ruleOn = came ? daysAfter(laid.laidOn, life.topperDays) : laid.laidOn
    const sentAt = came
      ? addDays(came.steps[0]!.plannedAt, -16, demoShop.zone)
      : addDays(nowAt, -daysBetween(laid.laidOn, nowAt) - 18, demoShop.zone)
    messages.push({
      id: `demo-message-${n}`,
      mailId: messageId({ visitId: `${id} ${ruleOn}`, channel, tryNo: 1 }, 'example.com'),
      customerId: life.vehicle.customerId,
      vehicleId: life.vehicle.id,
      planId: id,
      ruleOn,
      channel,
      address: addressFor(channel, life.vehicle.customerId),
      tryNo: 1,
      templateId: `reminder-${channel}`,
      language: 'en',
      subject: `protection renewal for your ${life.vehicle.make} ${life.vehicle.model}`,
      body: `The protection of your ${life.vehicle.make} ${life.vehicle.model} is due for renewal.`,
      unfilled: [],
      slots: [],
      state: 'sent',
      attempts: 1,
      sentAt,
      outcome,
      outcomeAt: outcome === null ? null : sentAt + 1_500,
      createdAt: sentAt - 60,
    })
    if (came)
      entries.push({
        actId: `demo-booked-${n}`,
        vehicleId: life.vehicle.id,
        planId: id,
        what: 'booked',
        ruleOn,
        jobId: came.id,
        at: sentAt + 1_500,
        who,
      })
  }
  await tx.message.createMany({ data: messages })
  await tx.upkeepEntry.createMany({ data: entries })
}

function addressFor(channel: string, customerId: string): string {
  const customer = demoCustomers.find(each => each.id === customerId)!
  if (channel === 'email') return customer.email
  return channel === 'letter' ? 'Osier Row, Harrowmere' : customer.phone
}

function daysAfter(on: string, days: number): string {
  return Temporal.PlainDate.from(on).add({ days }).toString()
}

function daysBetween(on: string, nowAt: number): number {
  const today = Temporal.PlainDate.from(dateOf(nowAt, demoShop.zone))
  return Temporal.PlainDate.from(on).until(today, { largestUnit: 'days' }).days
}
