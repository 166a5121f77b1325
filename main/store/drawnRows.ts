import type { Tx } from './store.ts'

/** What one step drew, with whose hands and on what size of vehicle. */
export interface DrawnRow {
  confirmedAt: number
  actualCenti: number
  expectedCenti: number
  stage: string
  name: string
  sizeClass: string
  /** Ids, joined with commas; null for a step nobody was taken for. */
  crew: string | null
}

/** Draws looked at for one product: enough for what the crew does these days, of every step and size. */
const mostRows = 2_000

/** The latest confirmed draws of a product, oldest first; steps that used none of it say nothing of a recipe. */
export async function drawnRows(tx: Tx, productId: string): Promise<DrawnRow[]> {
  const rows = await tx.$queryRaw<DrawnRow[]>`
    select d.confirmedAt, d.actualCenti, d.expectedCenti, s.stage, s.name, v.sizeClass,
      (select group_concat(c.crewId) from JobStepCrew c where c.stepId = s.id) as crew
    from StepDraw d
      join JobStep s on s.jobId = d.jobId and s.position = d.position
      join Job j on j.id = d.jobId
      join Vehicle v on v.id = j.vehicleId
    where d.productId = ${productId} and d.confirmedAt is not null and d.actualCenti > 0
    order by d.confirmedAt desc limit ${mostRows}`
  return rows.reverse()
}
