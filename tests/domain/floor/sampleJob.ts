/** A job of the tests: steps and coats with only what a case is about said. Minutes from 0. */
import { laidCoat } from '../../../main/domain/cure/index.ts'
import type { CuringProduct, FloorJob, FloorStep } from '../../../main/domain/floor/index.ts'
import { sheetProfile } from '../cure/profiles.ts'

export const coating: CuringProduct = {
  id: 'coating',
  name: 'Bergglas Two',
  kind: 'coating',
  cureProfile: sheetProfile,
  caution: null,
}
export const topper: CuringProduct = { ...coating, id: 'topper', name: 'Bergglas Veil', kind: 'topper' }
export const wash: CuringProduct = { ...coating, id: 'wash', name: 'Foam', kind: 'wash', cureProfile: null }
export const products = new Map([coating, topper, wash].map(product => [product.id, product]))

/** A hands-on step of 60 minutes from `startAt`, planned as it is projected. */
export function work(position: number, startAt: number, said: Partial<FloorStep> = {}): FloorStep {
  const endAt = said.endAt ?? startAt + 60
  return {
    position,
    kind: 'work',
    name: `Step ${position}`,
    stage: 'prepare',
    needs: '',
    skill: null,
    crewCount: 0,
    minutes: endAt - startAt,
    splittable: false,
    sameBay: false,
    waitMin: null,
    waitMax: null,
    moveAfterMin: null,
    productId: null,
    bayId: 'one',
    plannedAt: startAt,
    plannedEndAt: endAt,
    startAt,
    endAt,
    actualStartAt: null,
    actualEndAt: null,
    movedToBayId: null,
    movedAt: null,
    crewIds: [],
    ...said,
  }
}

export function hold(position: number, startAt: number, endAt: number, said: Partial<FloorStep> = {}) {
  return work(position, startAt, { kind: 'hold', stage: 'cure', endAt, productId: 'coating', ...said })
}

/** A coat on the car since `endAt`, its clock running at `celsius`; the sheet's reference is 20 °C. */
export function laid(position: number, endAt: number, said: Partial<FloorStep> = {}, celsius = 20) {
  const profile = { ...sheetProfile, rate: { rule: 'doubling' as const } }
  const laying = { fromAt: endAt - 60, toAt: endAt }
  const coat = laidCoat(profile, laying, { readings: [], usualC: celsius, usualFrom: 'set', nowAt: endAt })
  const times = { actualStartAt: endAt - 60, actualEndAt: endAt }
  return {
    ...work(position, endAt - 60, { stage: 'coat', productId: 'coating', ...times, ...said }),
    laid: coat,
  }
}

export function jobOf(
  steps: readonly FloorStep[],
  handoverAt: number,
  said: Partial<FloorJob> = {},
): FloorJob {
  return {
    id: 'job',
    number: 1,
    status: 'inShop',
    plate: 'KFR 204',
    promisedAt: handoverAt,
    plannedHandoverAt: handoverAt,
    handoverAt,
    leavesAt: handoverAt,
    arrivedAt: 0,
    coveredBy: 'Ines Vale',
    steps,
    ...said,
  }
}
