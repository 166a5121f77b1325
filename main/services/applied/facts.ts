import { momentWords } from '../../domain/calendar/index.ts'
import { ruleOf } from '../../domain/cure/index.ts'
import { type JobLayerView, layerViews, type ProductsById } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { degreesWords } from '../../domain/measure/index.ts'
import { sentence } from '../../domain/words.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { checkWords } from '../cure/coatCheck.ts'
import { earlyAir } from '../cure/earlyAir.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, plateWords, vehicleWords } from '../floor/jobRows.ts'
import type { IntakeContent } from '../intake/intake.ts'

export type AppliedFacts = Awaited<ReturnType<typeof appliedFacts>>

/** Everything the shop's own rows say of what went on a car. */
export async function appliedFacts(tx: Tx, floor: Floor, job: JobRow, products: ProductsById) {
  const { units } = floor.shop
  const when = (at: number) => momentWords(at, floor.zone)
  const [checks, heatings, intake, handover] = await Promise.all([
    tx.conditionCheck.findMany({ where: { jobId: job.id }, orderBy: { at: 'asc' } }),
    tx.forcedCure.findMany({ where: { jobId: job.id, voidedAt: null }, orderBy: { fromAt: 'asc' } }),
    tx.intakeEntry.findFirst({
      where: { intake: { jobId: job.id } },
      orderBy: { number: 'desc' },
      select: { content: true },
    }),
    tx.auditLine.findFirst({
      where: { entity: 'job', entityId: job.id, act: 'handed over' },
      orderBy: { at: 'desc' },
    }),
  ])
  const words = new Map(
    checks.map(({ position, warnings, ...check }) => [
      position,
      checkWords({ ...check, warnings: warnings as string[] }, units),
    ]),
  )
  const notes = { conditions: words, air: await earlyAir(tx, floor, job) }
  const layers = layerViews(job.steps, products, notes, floor.nowAt, units).filter(layer => layer.laid)
  const early = (handover?.detail as { reason?: string } | null)?.reason ?? ''
  return {
    shopName: floor.shop.name,
    jobNumber: job.number,
    customerName: job.customer.name,
    plate: plateWords(job.vehicle.plate),
    vehicleWords: vehicleWords(job.vehicle),
    vin: job.vehicle.vin,
    odometer: odometerWords(intake && fromJson<IntakeContent>(intake.content)),
    treatments: job.treatments.map(treatment => treatment.name),
    leftAt: job.leftAt,
    layers: layers.map(layer => layerFacts(layer, job, floor)),
    heatings: heatings.map(({ fromAt, toAt, panelC, note }) =>
      sentence(
        say('panels kept at {panelC} or hotter from {fromAt} to {toAt}', {
          panelC: degreesWords(panelC, units),
          fromAt: when(fromAt),
          toAt: when(toAt),
        }) + (note === '' ? '' : `, ${note}`),
      ),
    ),
    /** Reasons given where something was done against a figure: conditions, an early handover. */
    overrides: [
      ...checks
        .filter(check => check.reason !== '')
        .map(check =>
          say('{productName}, begun {at} all the same: {reason}', {
            productName: check.productName,
            at: when(check.at),
            reason: sentence(check.reason),
          }),
        ),
      ...(early === '' ? [] : [say('Handed over all the same: {early}', { early: sentence(early) })]),
    ],
  }
}

/** The odometer as it stood when the car was taken in; empty where nobody has read it. */
function odometerWords(intake: IntakeContent | null): string {
  const { odometer = null, odometerUnit = 'km' } = intake?.draft ?? {}
  return odometer === null ? '' : `${odometer} ${odometerUnit}`
}

function layerFacts(layer: JobLayerView, job: JobRow, floor: Floor) {
  const step = job.steps.find(each => each.position === layer.position)!
  const { profile, clock } = step.laid!
  const { leftAt } = job
  return {
    position: layer.position,
    name: layer.name,
    productName: layer.productName,
    stage: step.stage,
    startAt: layer.startAt,
    endAt: layer.endAt,
    bayName: floor.bayNames.get(step.bayId) ?? '',
    /** The conditions it was begun in, the rules not met and the reason, in words. */
    conditions: [layer.conditions ?? say('Not measured in the hour before.'), ...layer.air].join(' '),
    /** Whether it went on in the window of the coat beneath, in words; null where nothing lies beneath. */
    window: windowWords(layer, floor.zone),
    /** Cure age at handover, in minutes at the profile's reference temperature; null while the car is here. */
    ageMin: leftAt === null ? null : Math.floor(clock.ageAt(leftAt)),
    referenceC: profile.referenceC,
    /** How the time until then is known. */
    parts: leftAt === null ? null : clock.partsUntil(leftAt),
    /** The profile's earliest handover and whose figure it is. */
    rule: ruleOf(profile, 'handoverSafe', floor.shop.units)!.words,
  }
}

function windowWords({ window, verdict, asks }: JobLayerView, zone: string): string | null {
  if (verdict === null) return null
  if (window === null) return say('The coat beneath names no window for it.')
  const from = window.opensAt === null ? say('never in this cold') : momentWords(window.opensAt, zone)
  const span =
    window.closesAt === null
      ? say('From {from}', { from })
      : say('{from} to {closesAt}', { from, closesAt: momentWords(window.closesAt, zone) })
  const met = verdict === 'met' ? say('within it') : say(verdict)
  return [`${span}: ${met}.`, asks ? say('Asked then: {asks}', { asks: sentence(asks) }) : '']
    .filter(Boolean)
    .join(' ')
}
