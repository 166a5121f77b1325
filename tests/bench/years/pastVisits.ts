/** One past visit as rows: the job with its steps, people, draws, conditions and the lines the desk left behind. */
import { dateOf } from '../../../main/domain/calendar/index.ts'
import type { ProductsById } from '../../../main/domain/floor/index.ts'
import type { Visit } from './demoWeeks.ts'
import type { Row } from './insertRows.ts'
import type { PastShelf } from './pastShelf.ts'
import type { Car } from './people.ts'

export interface Place {
  number: number
  /** Minutes later than the visit it repeats. */
  shift: number
  /** Of the copy of the floor it stands on: names of bays and people follow. */
  lane: number
  car: Car
}

/** A bay or a person of one copy of the floor; the first is the demo's own. */
export function inLane(id: string, lane: number): string {
  return lane === 0 ? id : `${id}.${lane + 1}`
}

/** Tables with what is to be put into each, in the order that keys ask for. */
export type Rows = [table: string, rows: Row[]][]

export function visitRows(
  { job, draws }: Visit,
  { number, shift, lane, car }: Place,
  ground: { products: ProductsById; shelf: PastShelf; zone: string },
): Rows {
  const id = jobId(number)
  const dropOffAt = job.dropOffAt + shift
  const handoverAt = job.handoverAt + shift
  const createdAt = dropOffAt - 6 * 1440
  const jobRow: Row = {
    id,
    number,
    customerId: car.customerId,
    vehicleId: car.id,
    status: 'handedOver',
    condition: job.condition,
    dropOffAt,
    promisedAt: handoverAt,
    plannedHandoverAt: handoverAt,
    handoverAt,
    safeAt: job.safeAt + shift,
    advisedAt: job.advisedAt + shift,
    arrivedAt: dropOffAt,
    leftAt: handoverAt,
    createdAt,
  }
  const audit: Row[] = []
  const line = (at: number, act: string, detail: object) =>
    audit.push({
      id: `years-line-${number}-${audit.length}`,
      at,
      who: 'front desk',
      act,
      entity: 'job',
      entityId: id,
      detail: JSON.stringify(detail),
    })
  line(createdAt, 'held', { number, dropOffAt, promisedAt: handoverAt, heldUntilAt: createdAt + 30 })
  line(createdAt + 4, 'booked', { promisedAt: handoverAt })
  line(dropOffAt, 'arrived', { at: dropOffAt, dueAt: dropOffAt })
  const steps: Row[] = []
  const crew: Row[] = []
  const checks: Row[] = []
  for (const step of job.steps) {
    const { crew: people, jobId: _, id: __, ...rest } = step
    const stepId = `${id}-step-${step.position}`
    const moved = (at: number | null) => (at === null ? null : at + shift)
    const [startAt, endAt] = [step.startAt + shift, step.endAt + shift]
    steps.push({
      ...(rest as unknown as Row),
      splittable: Number(step.splittable),
      sameBay: Number(step.sameBay),
      id: stepId,
      jobId: id,
      bayId: inLane(step.bayId, lane),
      movedToBayId: step.movedToBayId === null ? null : inLane(step.movedToBayId, lane),
      movedAt: moved(step.movedAt),
      plannedAt: startAt,
      plannedEndAt: endAt,
      startAt,
      endAt,
      actualStartAt: moved(step.actualStartAt),
      actualEndAt: moved(step.actualEndAt),
    })
    for (const { crewId } of people) crew.push({ stepId, crewId: inLane(crewId, lane) })
    if (step.kind !== 'work') continue
    const { position, name } = step
    line(startAt, 'started', { position, step: name, at: startAt })
    line(endAt, 'finished', { position, step: name, at: endAt })
    line(endAt + 5, 'draws confirmed', { position, step: name })
    if (step.stage === 'coat' || step.stage === 'topper')
      checks.push({
        id: `${id}-check-${position}`,
        jobId: id,
        position,
        at: startAt,
        who: 'crew',
        productName: ground.products.get(step.productId ?? '')?.name ?? '',
        readingAt: startAt - 5,
        airC: 21,
        humidityPercent: 47,
        panelC: 20,
        dewC: 9.3,
        marginC: 10.7,
        warnings: '[]',
        reason: '',
      })
  }
  line(handoverAt, 'handed over', { at: handoverAt, undone: [], reason: '' })
  const drawn = drawRows(id, job, draws, shift, ground.shelf)
  return [
    ['Job', [jobRow]],
    ['JobTreatment', treatmentRows(id, job)],
    ['JobStep', steps],
    ['JobStepCrew', crew],
    ['ConditionCheck', checks],
    ...drawn,
    ['Layer', layerRows(id, job, shift, car, ground.zone)],
    ['AuditLine', audit],
  ]
}

export function jobId(number: number): string {
  return `years-job-${String(number).padStart(7, '0')}`
}

function treatmentRows(id: string, job: Visit['job']): Row[] {
  return job.treatments.map(({ treatmentId, position, name, priceMinor }) => ({
    id: `${id}-sold-${position}`,
    jobId: id,
    treatmentId,
    position,
    name,
    priceMinor,
  }))
}

function drawRows(
  id: string,
  job: Visit['job'],
  draws: Visit['draws'],
  shift: number,
  shelf: PastShelf,
): Rows {
  const [lots, moves, lines]: [Row[], Row[], Row[]] = [[], [], []]
  for (const { position, productId, expectedCenti, sdCenti } of draws) {
    const endAt = job.steps.find(step => step.position === position)?.endAt ?? job.handoverAt
    const at = endAt + shift
    const drawn = shelf.draw(productId, expectedCenti, at, { jobId: id, position })
    lots.push(...drawn.lots)
    moves.push(...drawn.moves)
    lines.push({
      jobId: id,
      position,
      productId,
      expectedCenti,
      sdCenti,
      confirmedAt: at,
      actualCenti: expectedCenti,
      how: 'proposed',
    })
  }
  return [
    ['Lot', lots],
    ['StockMove', moves],
    ['StepDraw', lines],
  ]
}

function layerRows(id: string, job: Visit['job'], shift: number, car: Car, zone: string): Row[] {
  const laid = new Map<string, Row>()
  for (const { stage, productId, endAt, position } of job.steps)
    if ((stage === 'coat' || stage === 'topper') && productId !== null)
      laid.set(`${stage} ${productId}`, {
        id: `${id}-layer-${position}`,
        vehicleId: car.id,
        productId,
        stage,
        laidOn: dateOf(endAt + shift, zone),
        jobId: id,
      })
  return [...laid.values()]
}
