import { dateOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { amountWords, centiOf, mixesLots, planDraw } from '../../domain/shelf/index.ts'
import { listWords } from '../../domain/words.ts'
import { laidLots } from '../../store/laidLots.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import { appendMoves, entryOf } from './append.ts'
import { asField } from './asField.ts'
import {
  bottlesOf,
  type Counted,
  countedProduct,
  holdingOfRow,
  type ShelfDay,
  shelfDay,
} from './countedProducts.ts'
import type { ConfirmInput, DrawInput } from './inputs.ts'
import { stepsLeft } from './stepsToConfirm.ts'
import { weighedCenti } from './weigh.ts'

export type ConfirmedView = Awaited<ReturnType<typeof confirmDraws>>

/**
 * Draws from the shelf what a finished step used, as confirmed, corrected or weighed by the crew. Answers what was drawn
 * from which bottle, in words, and how many steps are left to confirm today.
 */
export function confirmDraws(desk: Desk, input: ConfirmInput) {
  const { jobId, position, version } = input
  return act(desk, async (tx, audit) => {
    const job = await tx.job.findUnique({
      where: { id: jobId },
      select: { version: true, steps: { where: { position }, select: { name: true, actualEndAt: true } } },
    })
    const step = job?.steps[0]
    if (!job || !step)
      refuse('missing', { jobId }, say('This step is not there any more; look at the list again.'))
    if (job.version !== version) assertFresh(0, 'job', jobId)
    if (step.actualEndAt === null)
      refuse(
        'not-finished',
        { position },
        say('"{name}" is not finished yet: finish it first, then confirm what it used.', { name: step.name }),
      )
    const words = await drawForStep(tx, audit, desk, input)
    return { version, words, left: await stepsLeft(tx, desk.now()) }
  })
}

/**
 * Draws for one step inside a transaction that may hold more (the step's finish): moves on the ledger, bottles opened,
 * and the step's lines marked with what was really used.
 * @throws Refusal `stale` where somebody has confirmed a line meanwhile, `beyond-stock` where the shelf has less.
 */
export async function drawForStep(
  tx: Tx,
  audit: Audit,
  desk: Desk,
  { jobId, position, draws }: Pick<ConfirmInput, 'jobId' | 'position' | 'draws'>,
): Promise<string[]> {
  const ground = await shelfDay(tx, desk.now())
  const words: string[] = []
  for (const [productId, parts] of Map.groupBy(draws, draw => draw.productId)) {
    const product = await countedProduct(tx, productId)
    const key = { jobId, position, productId }
    await assertOpen(tx, key, product)
    const laid = await laidLots(tx, jobId, productId)
    let usedCenti = 0
    for (const part of parts) {
      const field = `draws.${draws.indexOf(part)}`
      const drawn = await asField(field, () => drawPart(tx, desk, ground, product, { jobId, position, part }))
      usedCenti += drawn.centi
      words.push(drawn.words)
    }
    if (product.kind === 'coating')
      askOfMixing(laid, await laidLots(tx, jobId, productId), { product, parts, draws })
    const weighed = parts.find(part => part.how === 'weighed')
    const how = usedCenti === 0 ? 'none' : ((weighed ?? parts[0])?.how ?? 'none')
    await markConfirmed(tx, key, { confirmedAt: desk.now(), actualCenti: usedCenti, how })
    audit({
      act: 'drawn',
      entity: 'stock',
      entityId: productId,
      detail: { jobId, position, centi: usedCenti, how, ...mixingOf(parts) },
    })
  }
  return words
}

interface Part {
  jobId: string
  position: number
  part: DrawInput
}

/** One part of a draw: its moves and the bottles it opens. */
async function drawPart(
  tx: Tx,
  desk: Desk,
  { day, nowAt }: ShelfDay,
  product: Counted,
  { jobId, position, part }: Part,
): Promise<{ centi: number; words: string }> {
  const rows = await bottlesOf(tx, product.id)
  const chosen = rows.find(row => row.id === part.lotId)
  if (part.lotId !== null && !chosen)
    refuse('missing', { lotId: part.lotId }, say('This bottle is not on the shelf any more; choose another.'))
  const needCenti =
    part.how === 'weighed'
      ? weighedCenti(product, chosen, part.weighed?.grossG)
      : centiOf(part.amount ?? Number.NaN)
  if (needCenti === 0) return { centi: 0, words: say('no {name} used', { name: product.name }) }
  const holdings = rows.map(holdingOfRow)
  const request = {
    productId: product.id,
    unit: product.unit,
    holdings,
    needCenti,
    day,
    at: nowAt,
    by: desk.who,
    stepId: String(position),
    jobId,
    foundMore: part.foundMore,
    why: part.mixing?.trim() || null,
  }
  const plan = planDraw({ ...request, override: overrideOf(request, chosen?.id, part) })
  await appendMoves(tx, plan.moves.map(entryOf))
  if (plan.opens.length > 0)
    await tx.lot.updateMany({
      where: { id: { in: [...plan.opens] } },
      data: { openedOn: dateOfDay(day), lifeAfterOpeningDays: product.lifeAfterOpeningDays },
    })
  const from = plan.moves
    .filter(move => move.kind === 'use')
    .map(move => say('no. {number}', { number: rows.find(row => row.id === move.lotId)?.number }))
  const found =
    plan.foundCenti > 0
      ? say(', {foundCenti} of it found more than counted', {
          foundCenti: amountWords(plan.foundCenti, product.unit),
        })
      : ''
  return {
    centi: needCenti,
    words: say('{needCenti} of {name} from {from}{found}', {
      needCenti: amountWords(needCenti, product.unit),
      name: product.name,
      from: listWords(from),
      found,
    }),
  }
}

/** A second batch of a coating on one car wants a reason, which stands in the ledger and in the history. */
function askOfMixing(
  before: Awaited<ReturnType<typeof laidLots>>,
  after: typeof before,
  { product, parts, draws }: { product: Counted; parts: readonly DrawInput[]; draws: readonly DrawInput[] },
): void {
  if (!mixesLots(before, after)) return
  const lines = after.map(lot =>
    say('no. {number}, {batch}', {
      number: lot.number,
      batch: lot.batch === null ? say('batch not known') : say('batch {batch}', { batch: lot.batch }),
    }),
  )
  askFirst('mixes-lots', lines, {
    field: `draws.${draws.findIndex(draw => parts.includes(draw))}.mixing`,
    lead: say('Two batches of {name} on one car: say why, or draw from one of them.', { name: product.name }),
    accepted: Object.keys(mixingOf(parts)).length > 0,
  })
}

function mixingOf(parts: readonly DrawInput[]): { mixing?: string } {
  const mixing = parts.flatMap(part => part.mixing?.trim() || []).join('; ')
  return mixing ? { mixing } : {}
}

/** The override for a bottle chosen out of turn; a weighed one and the one next in line need no reason. */
function overrideOf(request: Parameters<typeof planDraw>[0], lotId: string | undefined, part: DrawInput) {
  if (lotId === undefined) return undefined
  const inTurn = planDraw({ ...request, needCenti: 1, foundMore: true }).moves.at(-1)?.lotId
  if (inTurn === lotId) return undefined
  const turn = part.reason ?? (part.how === 'weighed' ? say('this bottle was weighed') : '')
  return { lotId, why: turn.trim() && part.mixing ? `${turn}; ${part.mixing}` : turn }
}

/** Refuses a line that is confirmed already: two windows had the same step open. */
async function assertOpen(tx: Tx, key: LineKey, product: Counted): Promise<void> {
  const line = await tx.stepDraw.findUnique({ where: { jobId_position_productId: key } })
  if (line && line.confirmedAt !== null)
    refuse(
      'stale',
      { position: key.position },
      say(
        'What this step used of {name} has been confirmed meanwhile: {actualCenti}. Nothing was drawn twice.',
        { name: product.name, actualCenti: amountWords(line.actualCenti ?? 0, product.unit) },
      ),
    )
}

interface LineKey {
  jobId: string
  position: number
  productId: string
}

/** Marks a line with what was really used; a product the recipe does not name gets a line of its own. */
async function markConfirmed(
  tx: Tx,
  key: LineKey,
  data: { confirmedAt: number; actualCenti: number; how: string },
): Promise<void> {
  await tx.stepDraw.upsert({
    where: { jobId_position_productId: key },
    update: data,
    create: { ...key, ...data, expectedCenti: 0, sdCenti: 0 },
  })
}
