import { type OrderedProduct, type WorkOrder, workOrderPdf } from '../../documents/workOrder.ts'
import { momentWords } from '../../domain/calendar/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { systemCautions, toolCautions } from '../../domain/paint/index.ts'
import {
  type CheckMoment,
  type PaintSystem,
  type ProductKind,
  type Stage,
  scopeWords,
} from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { letterheadOf } from '../desk/issuer.ts'
import { safetyOf } from '../shelf/safety.ts'
import { getJob, type JobStepView, type JobView } from './jobView.ts'
import { orderedPanels } from './orderedPanels.ts'

const momentsSaid: Readonly<Record<CheckMoment, string>> = {
  arrival: word('When the car comes'),
  coat: word('Before it is coated'),
  handover: word('Before it leaves'),
}

/** The work order of a job as it now stands, to hang beside the car. */
export async function workOrder(desk: Desk, { id }: { id: string }) {
  const job = await getJob(desk, { id })
  const bytes = await workOrderPdf(await orderOf(desk, job))
  return { name: `work-order-${job.number}.pdf`, type: 'application/pdf', bytes }
}

async function orderOf(desk: Desk, job: JobView): Promise<WorkOrder> {
  const tx = desk.store.read
  const when = (at: number) => momentWords(at, job.zone)
  const work = job.steps.filter(step => step.kind === 'work')
  return {
    at: job.nowAt,
    ...(await letterheadOf(tx)),
    number: job.number,
    facts: [
      [say('Car'), job.vehicle.words],
      [say('Plate'), job.vehicle.plate],
      [say('Owner'), job.customer.name],
      [say('Paint'), `${say(job.vehicle.finish)}, ${say(job.condition)}`],
      [job.arrivedAt === null ? say('Comes') : say('Came'), when(job.arrivedAt ?? job.dropOffAt)],
      [say('Promised'), when(job.promisedAt)],
      [say('Printed'), when(job.nowAt)],
    ],
    treatments: job.treatments.map(({ name, scope, leftOut }) => ({
      name,
      under: [say(scopeWords[scope]), leftOut === '' ? '' : say('leaves out {leftOut}', { leftOut })]
        .filter(Boolean)
        .join('; '),
    })),
    ...(await orderedPanels(tx, job)),
    notes: [job.note, job.vehicle.note].filter(note => note.trim() !== ''),
    steps: job.steps.map(step => stepOf(step, when, job.nowAt)),
    cure: [
      ...job.cureWords,
      ...(job.coated ? [say('Earliest pick-up {safeAt}.', { safeAt: when(job.safeAt) })] : []),
    ],
    checks: job.checks.map(({ moment, words, doneBy }) => ({
      when: say(momentsSaid[moment]),
      words,
      doneBy,
    })),
    tools: await toolsOf(tx, job.vehicle.paint, work),
    products: await productsOf(tx, work),
  }
}

function stepOf(step: JobStepView, when: (at: number) => string, nowAt: number) {
  const product = step.productName === null ? [] : [step.productName]
  return {
    name: step.name,
    under: [...product, ...step.uses, ...(step.kind === 'hold' ? [say('nobody touches the car')] : [])].join(
      '; ',
    ),
    bay: step.moved
      ? say('{bayName}, {bayName2} from {at}', {
          bayName: step.bayName,
          bayName2: step.moved.bayName,
          at: when(step.moved.at),
        })
      : step.bayName,
    from: when(step.actualStartAt ?? step.startAt),
    to: when(step.actualEndAt ?? step.endAt),
    who: step.crew
      .map(({ name, helps }) =>
        helps ? say('{name} (helps from {from})', { name, from: when(helps.from) }) : name,
      )
      .join(', '),
    // A hold that has run out is over without anybody's tick.
    done: step.kind === 'hold' ? step.endAt <= nowAt : step.actualEndAt !== null,
  }
}

/** What to mind with the tools of these steps, as the intake's screen says it. */
async function toolsOf(tx: Tx, paint: PaintSystem, work: readonly JobStepView[]): Promise<string[]> {
  const products = await tx.product.findMany({
    where: { id: { in: productIds(work) } },
    select: { id: true, kind: true },
  })
  const kinds = new Map(products.map(({ id, kind }) => [id, kind as ProductKind]))
  const steps = work.map(({ stage, productId }) => ({
    stage: stage as Stage,
    productKind: kinds.get(productId ?? '') ?? null,
  }))
  return [...toolCautions(steps), ...systemCautions(paint, steps)]
}

function productIds(work: readonly JobStepView[]): string[] {
  return [...new Set(work.flatMap(step => step.productId ?? []))]
}

async function productsOf(tx: Tx, work: readonly JobStepView[]): Promise<OrderedProduct[]> {
  const all: OrderedProduct[] = []
  for (const id of productIds(work)) {
    const safety = await safetyOf(tx, id)
    all.push({
      name: safety.productName,
      signalWord: safety.label.signalWord,
      pictograms: safety.label.pictograms.map(({ code }) => code),
      hazards: safety.label.hazards.map(({ text }) => (/[.!?]$/.test(text) ? text : `${text}.`)),
      protection: safety.protection ?? [],
      caution: safety.caution,
      handling: safety.handling.map(({ words }) => words),
      silences: safety.silences.filter(({ field }) => handled.has(field)).map(({ words }) => words),
    })
  }
  return all
}

/** What changes how a product is handled; what else the sheet is silent on stands with the product. */
const handled: ReadonlySet<string> = new Set(['hazardCodes', 'protection'])
