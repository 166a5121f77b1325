import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { panelNames, panelsOver, type Scope } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import type { JobRow } from '../floor/jobRows.ts'
import type { AppliedFacts } from './facts.ts'
import type { AppliedDraft, Zone } from './inputs.ts'

/** The panels each product was sold for, over all treatments of the job that lay it, as they lay it now. */
export async function soldOver(tx: Tx, job: JobRow): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const rows = await tx.treatmentStep.findMany({
    where: {
      treatmentId: { in: job.treatments.map(each => each.treatmentId) },
      stage: { in: ['coat', 'topper'] },
      NOT: { productId: null },
    },
    select: { treatmentId: true, productId: true },
  })
  const over = new Map<string, Set<string>>()
  for (const { treatmentId, productId } of rows)
    for (const sold of job.treatments.filter(each => each.treatmentId === treatmentId)) {
      const panels = over.get(productId ?? '') ?? new Set()
      over.set(productId ?? '', panels)
      for (const panel of panelsOver(sold.scope as Scope, sold.leftOut)) panels.add(panel)
    }
  return over
}

/** What is proposed for a layer nobody has written of yet: the paint it was sold for, or the wheels where its step says so. */
function zonesOf(name: string, finish: Zone['finish'], over: ReadonlySet<string> | undefined): Zone[] {
  if (/wheel|rim|felge/i.test(name)) return [{ name: 'Wheels', finish: 'wheels' }]
  if (/glas|screen|window|scheibe/i.test(name)) return [{ name: 'Glass', finish: 'glass' }]
  return panelNames.filter(panel => over?.has(panel) ?? true).map(panel => ({ name: panel, finish }))
}

/** The lots of each layer's product: what its step drew from first, then what is open or in stock. */
export async function lotsOf(tx: Tx, job: JobRow): Promise<{ position: number; lots: string[] }[]> {
  const steps = job.steps.filter(step => step.laid && step.productId !== null)
  const lots = await tx.lot.findMany({
    where: { productId: { in: steps.flatMap(step => step.productId ?? []) } },
    orderBy: [{ openedOn: { sort: 'desc', nulls: 'last' } }, { number: 'desc' }],
    include: { moves: { where: { jobId: job.id, kind: 'use' } } },
  })
  return steps.map(step => {
    const own = lots.filter(lot => lot.productId === step.productId)
    const drawn = own.filter(lot => lot.moves.some(move => move.position === step.position))
    return {
      position: step.position,
      lots: [...new Set([...drawn, ...own])].map(({ number, batch }) =>
        batch ? say('bottle {number}, batch {batch}', { number, batch }) : say('bottle {number}', { number }),
      ),
    }
  })
}

/** The draft with what the shop knows filled in where nobody has entered anything. */
export function filledDraft(
  saved: AppliedDraft | null,
  facts: AppliedFacts,
  job: JobRow,
  floor: Floor,
  lots: Awaited<ReturnType<typeof lotsOf>>,
  drawnFrom: ReadonlySet<number>,
  over: Awaited<ReturnType<typeof soldOver>>,
): AppliedDraft {
  return {
    note: saved?.note ?? '',
    layers: facts.layers.map(layer => {
      const own = saved?.layers.find(({ position }) => position === layer.position)
      if (own) return own
      const step = job.steps.find(({ position }) => position === layer.position)!
      const lot = drawnFrom.has(layer.position)
        ? lots.find(({ position }) => position === layer.position)?.lots[0]
        : undefined
      return {
        position: layer.position,
        lot: lot ?? '',
        who: step.crewIds.map(id => floor.crewNames.get(id) ?? '').join(', '),
        zones: zonesOf(
          `${layer.name} ${layer.productName}`,
          job.vehicle.finish as Zone['finish'],
          over.get(step.productId ?? ''),
        ),
      }
    }),
  }
}

/** Refuses a record that proves nothing: a layer without its lot, its people or its panels. */
export function checkDraft(draft: AppliedDraft, facts: AppliedFacts): AppliedDraft {
  const layers = facts.layers.map((layer, i) => {
    const own = draft.layers.find(({ position }) => position === layer.position)
    const refuse = (field: string, words: string) =>
      new Refusal('incomplete', `draft.layers.${i}.${field}`, null, `${layer.name}: ${words}`)
    if (!own || own.lot.trim() === '')
      throw refuse('lot', say('write the batch printed on the bottle, or "not known" where nobody can say.'))
    if (own.who.trim() === '') throw refuse('who', say('write who laid it.'))
    if (own.zones.length === 0) throw refuse('zones', say('choose the panels or zones it went on.'))
    return own
  })
  return { layers, note: draft.note.trim() }
}
