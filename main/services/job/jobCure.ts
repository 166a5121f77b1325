import { durationWords } from '../../domain/calendar/index.ts'
import { type MilestoneName, milestoneNames, ruleOf } from '../../domain/cure/index.ts'
import { coatsOf, layerViews, type ProductsById } from '../../domain/floor/index.ts'
import { can } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { degreesWords, type UnitSystem } from '../../domain/measure/index.ts'
import { checkWords } from '../cure/coatCheck.ts'
import { earlyAir } from '../cure/earlyAir.ts'
import type { Desk } from '../desk/desk.ts'
import { languageTo } from '../desk/speaking.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { otherVisits } from '../floor/vehicleFree.ts'
import { jobOnFloor } from './jobOnFloor.ts'
import { slipOf } from './slip.ts'

export type JobCureView = Awaited<ReturnType<typeof jobCure>>

/** The layers of a job and the conditions they were laid in, its heated cures, and what to do where its promise slips. */
export async function jobCure(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { floor, job, products } = await jobOnFloor(tx, nowAt, id)
  const checks = await tx.conditionCheck.findMany({ where: { jobId: id }, orderBy: { at: 'asc' } })
  const { units } = floor.shop
  // Of a step begun anew the last check counts; the earlier ones stay in the database.
  const conditions = new Map(
    checks.map(({ position, warnings, ...check }) => [
      position,
      checkWords({ ...check, warnings: warnings as string[] }, units),
    ]),
  )
  const heatings = await tx.forcedCure.findMany({
    where: { jobId: id, voidedAt: null },
    orderBy: { fromAt: 'asc' },
    select: { id: true, fromAt: true, toAt: true, panelC: true, note: true, who: true },
  })
  const laid = job.steps.flatMap(step => step.laid ?? [])
  return {
    layers: layerViews(
      job.steps,
      products,
      { conditions, air: await earlyAir(tx, floor, job) },
      nowAt,
      units,
    ),
    /** Heated cures may be recorded: a coat is laid, and its profile has rows for it or not. */
    canHeat: can(job, 'work') && laid.length > 0,
    /** The rows of the profiles laid, in words; empty where no data sheet has one. */
    heatRows: [
      ...new Set(
        laid.flatMap(({ profile }) =>
          profile.forcedCure.map(row =>
            say('panel at {panelC} or hotter for {minutes} stands for {standsForMin} (data sheet)', {
              panelC: degreesWords(row.panelC, units),
              minutes: durationWords(row.minutes),
              standsForMin: durationWords(row.standsForMin),
            }),
          ),
        ),
      ),
    ],
    heatings,
    slip: slipOf(
      floor,
      job,
      products,
      await otherVisits(tx, floor, job),
      await languageTo(tx, job.customer.id),
    ),
    rules: rulesOf(job, products, units),
  }
}

const toldRules: ReadonlySet<MilestoneName> = new Set([
  'tackFree',
  'recoatOpens',
  'recoatCloses',
  'topperOpens',
  'topperCloses',
  'handoverSafe',
  'handoverAdvised',
  'keepDryEnds',
  'firstWash',
])

/** Which figure each moment of the last coat rests on, and who decides. */
function rulesOf(job: JobRow, products: ProductsById, units: UnitSystem): string[] {
  const coat = coatsOf(job.steps, products).at(-1)
  if (!coat) return []
  return milestoneNames
    .filter(name => toldRules.has(name) && (coat.product.kind !== 'topper' || !name.startsWith('topper')))
    .flatMap(name => ruleOf(coat.product.cureProfile, name, units)?.words ?? [])
}
