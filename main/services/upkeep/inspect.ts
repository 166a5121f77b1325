import { checkDate, dayWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { foundOn, readingOf } from '../../domain/upkeep/index.ts'
import { act, type Desk } from '../desk/desk.ts'
import { exposureOf, scaled } from './exposure.ts'
import type { InspectInput, LayerInput } from './inputs.ts'
import { daysFrom } from './layers.ts'
import { assertOnFile } from './onFile.ts'
import { upkeepRules } from './settings.ts'
import { upkeepDay } from './visits.ts'

/**
 * A layer was looked at before and after its wash, panel by panel. Refused where a second look contradicts an earlier one;
 * a single look contradicts nothing, for nobody knows whether what it found gone was only clogged. No due day moves
 * by it; a proposal may follow.
 */
export function inspect(desk: Desk, input: InspectInput): Promise<{ id: string }> {
  if (input.on !== undefined) checkDate(input.on, 'on')
  const note = checkNote(input.note ?? '', 'note', 400)
  return act(desk, async (tx, audit, at) => {
    const { today } = await upkeepDay(tx, at)
    const layer = await tx.layer.findUnique({
      where: { id: input.layerId },
      include: { inspections: { where: { voidedAt: null } } },
    })
    if (!layer)
      refuse('missing', { layerId: input.layerId }, say('This layer is not on file; look at the car again.'))
    const onDay = input.on ?? today
    if (onDay > today || onDay < layer.laidOn)
      refuse(
        'date-bad',
        { on: onDay },
        onDay > today
          ? say('{onDay} is still to come; give the day it was looked at.', { onDay: dayWords(onDay) })
          : say('It was laid on {laidOn}; it cannot have been looked at before.', {
              laidOn: dayWords(layer.laidOn),
            }),
      )
    const found = foundOn(input.panels)
    const { working, secondLook } = found
    const looks = [...layer.inspections, { onDay, working, secondLook }].filter(look => look.secondLook)
    // Its own refusal says which of two looks cannot be.
    readingOf(looks.map(look => ({ age: daysFrom(layer.laidOn, look.onDay), working: look.working })))
    const { choices } = await exposureOf(tx, layer.vehicleId)
    const { multiplier } = scaled(365, choices, await upkeepRules(tx))
    const row = await tx.inspection.create({
      data: {
        layerId: layer.id,
        onDay,
        working,
        secondLook,
        panels: input.panels,
        exposure: multiplier,
        note,
        at,
        who: desk.who,
      },
    })
    audit({
      act: 'inspected',
      entity: 'vehicle',
      entityId: layer.vehicleId,
      detail: { inspectionId: row.id, layerId: layer.id, onDay, working, secondLook, found: found.words },
    })
    return { id: row.id }
  })
}

/** Takes a look back that was entered wrongly. */
export function voidInspection(desk: Desk, input: { id: string }): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const { count } = await tx.inspection.updateMany({
      where: { id: input.id, voidedAt: null },
      data: { voidedAt: at },
    })
    if (count === 0)
      refuse(
        'missing',
        { id: input.id },
        say('This inspection was taken back already; look at the car again.'),
      )
    audit({ act: 'inspection taken back', entity: 'inspection', entityId: input.id })
  })
}

/** A layer laid before this program, or elsewhere, so that its life is known. */
export function recordLayer(desk: Desk, input: LayerInput): Promise<{ id: string }> {
  checkDate(input.laidOn, 'laidOn')
  return act(desk, async (tx, audit, at) => {
    const { today } = await upkeepDay(tx, at)
    if (input.laidOn > today)
      refuse(
        'to-come',
        { laidOn: input.laidOn },
        say('{laidOn} is still to come.', { laidOn: dayWords(input.laidOn) }),
      )
    const product = await tx.product.findUnique({ where: { id: input.productId } })
    if (product?.kind !== 'coating' && product?.kind !== 'topper')
      refuse('product-bad', { productId: input.productId }, say('Choose a coating or a topper.'))
    await assertOnFile(tx, input.vehicleId)
    const stage = product.kind === 'topper' ? 'topper' : 'coat'
    const { id } = await tx.layer.create({ data: { ...input, stage } })
    audit({
      act: 'layer recorded',
      entity: 'vehicle',
      entityId: input.vehicleId,
      detail: { ...input, stage },
    })
    return { id }
  })
}
