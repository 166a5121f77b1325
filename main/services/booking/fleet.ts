/** Several cars of one payer, with one answer: each its own stay, the later ones around the earlier. */

import { setImmediate as nextTurn } from 'node:timers/promises'
import { say } from '../../domain/language/index.ts'
import { refuse, withField } from '../../domain/refusal.ts'
import type { Finish, SizeClass } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { nameOfCar } from '../floor/jobRows.ts'
import { vehicleInUse } from '../records/vehicles.ts'
import { confirmPlaceIn, holdPlaceIn, releasePlaceIn } from './booking.ts'
import type { FleetInput, HeldPlaces } from './inputs.ts'
import { offers } from './offers.ts'

export type FleetHeldView = Awaited<ReturnType<typeof holdFleet>>

/**
 * Holds the soonest place for each car, in the order given, with the places of those before it held: all of them, or
 * none where one has no place.
 */
export function holdFleet(desk: Desk, input: FleetInput) {
  const { vehicleIds, notBefore, ...wish } = input
  return act(desk, async (tx, audit, nowAt) => {
    const inside = readingIn(desk, tx)
    const places = []
    for (const [i, vehicleId] of vehicleIds.entries()) {
      try {
        const car = await vehicleInUse(tx, vehicleId)
        const { soonest } = await offers(inside, {
          ...wish,
          vehicleId,
          sizeClass: car.sizeClass as SizeClass,
          finish: car.finish as Finish,
          ...(notBefore !== undefined && { notBefore }),
        })
        const carName = nameOfCar(car)
        if (!soonest.feasible)
          refuse(
            'no-place',
            { vehicleId },
            say('There is no place for {carName}: {reasons}', {
              carName,
              reasons: soonest.reasons.join(' '),
            }),
          )
        const held = await holdPlaceIn(tx, audit, nowAt, { ...wish, vehicleId, plan: soonest.plan })
        const { dropOffAt, handoverAt, reasons } = soonest
        places.push({ ...held, carName, dropOffAt, handoverAt, reason: reasons[0] ?? null })
      } catch (error) {
        throw withField(error, field => (field === 'vehicleId' ? `vehicleIds.${i}` : field))
      }
      await nextTurn()
    }
    return { places, heldUntilAt: places[0]?.heldUntilAt ?? nowAt }
  })
}

/** A desk that reads what this act has written so far. */
function readingIn(desk: Desk, tx: Tx): Desk {
  return { ...desk, store: { ...desk.store, read: tx as Desk['store']['read'] } }
}

/** Books all places, or none. */
export function bookFleet(desk: Desk, { places }: HeldPlaces): Promise<void> {
  return act(desk, async (tx, audit, nowAt) => {
    for (const place of places) await confirmPlaceIn(tx, audit, nowAt, place)
  })
}

/** Lets all places go. */
export function releaseFleet(desk: Desk, { places }: HeldPlaces): Promise<void> {
  return act(desk, async (tx, audit) => {
    for (const place of places) await releasePlaceIn(tx, audit, place)
  })
}
