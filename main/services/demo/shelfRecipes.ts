/** What the demo's steps draw on a medium car, and what its data sheets say. All figures are invented. */
import type { StorageGroup } from '../../domain/hazard/index.ts'
import { centiOf } from '../../domain/shelf/index.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import { bySize, type RecipeLine } from '../shelf/stepDraws.ts'

const factors: Record<SizeClass, number> = { small: 0.85, medium: 1, large: 1.2, xl: 1.4 }

/** Amount on a medium car; the spread is an eighth of it. Pieces stay whole. */
function line(productId: string, medium: number, pieces = false): RecipeLine {
  return {
    productId,
    bySize: bySize(size => {
      const amount = pieces ? Math.ceil(medium * factors[size]) : Math.round(medium * factors[size])
      return { centi: centiOf(amount), sdCenti: Math.round(centiOf(amount) / 8) }
    }),
  }
}

const cloths = (count: number) => line('demo-cloths', count, true)

/**
 * By the step's name and, where two treatments call different work the same, by its product. Common practice, no
 * source: 300 to 500 ml of a ready-to-use iron remover a car; the cloths a coating was levelled with are thrown away,
 * for what hardens in them scratches; pads are washed and used again, so no step uses one up.
 */
export function demoDraws(step: { name: string; productId: string | null }): RecipeLine[] {
  switch (step.name) {
    case 'Wash':
      return [line('demo-foam', 80)]
    case 'Decontaminate':
      return [line('demo-iron', 400)]
    case 'Polish':
      return [line('demo-refine', 90)]
    case 'Cut':
      return [line('demo-cut', 110)]
    case 'Refine':
      return [line('demo-refine', 80)]
    case 'Panel wipe':
      return [line('demo-wipe', 60)]
    case 'Wipe wheels':
      return [line('demo-wipe', 25)]
    case 'Wheels':
      return [line('demo-tamsk-rim', 12), cloths(3)]
    case 'First layer':
      return [line('demo-ovrel-two', 28), cloths(5)]
    case 'Second layer':
      return [line('demo-ovrel-two', 22), cloths(5)]
    case 'Layer':
      return [
        step.productId === 'demo-ovrel-one' ? line('demo-ovrel-one', 26) : line('demo-tamsk-quick', 24),
        cloths(5),
      ]
    case 'Topper':
      return [
        step.productId === 'demo-lindavel-top' ? line('demo-lindavel-top', 35) : line('demo-ovrel-veil', 30),
      ]
    default:
      return []
  }
}

interface DemoSheet {
  productId: string
  hazardCodes: string[]
  precautionaryCodes: string[]
  signalWord: 'Danger' | 'Warning' | 'none'
  protection: string[] | null
  storageGroup: StorageGroup | null
  unNumber: string | null
  ph: number | null
}

/** A coating of silanes in a hydrocarbon solvent: it burns, harms the lungs when swallowed and sensitises the skin. */
const silane = {
  hazardCodes: ['H226', 'H304', 'H315', 'H317', 'H318'],
  precautionaryCodes: ['P210', 'P233', 'P261', 'P280', 'P301+P310', 'P331', 'P305+P351+P338'],
  signalWord: 'Danger' as const,
  protection: ['nitrile gloves', 'safety goggles', 'local extraction, or a respirator as the sheet says'],
  storageGroup: 'flammable' as const,
  unNumber: 'UN1993',
  ph: null,
}
const mild = {
  hazardCodes: ['H319'],
  precautionaryCodes: ['P280', 'P305+P351+P338'],
  signalWord: 'Warning' as const,
  protection: ['gloves', 'safety glasses'],
  storageGroup: 'general' as const,
  unNumber: 'none',
  ph: 7.5,
}

/** What somebody read off the invented data sheets; two products have none yet, one leaves a point open. */
export const demoSheets: DemoSheet[] = [
  { productId: 'demo-ovrel-one', ...silane },
  { productId: 'demo-ovrel-two', ...silane },
  {
    productId: 'demo-tamsk-quick',
    ...silane,
    hazardCodes: ['H226', 'H317', 'H319', 'H336'],
    precautionaryCodes: ['P210', 'P261', 'P280', 'P302+P352', 'P305+P351+P338'],
    signalWord: 'Warning',
    protection: null,
  },
  // About a fifth of isopropanol in water: it still takes fire, less readily than the alcohol itself.
  {
    productId: 'demo-wipe',
    hazardCodes: ['H226', 'H319'],
    precautionaryCodes: ['P210', 'P233', 'P280', 'P305+P351+P338'],
    signalWord: 'Warning',
    protection: ['nitrile gloves', 'safety glasses', 'moving air'],
    storageGroup: 'flammable',
    unNumber: 'UN1993',
    ph: null,
  },
  { productId: 'demo-foam', ...mild },
  { productId: 'demo-cut', ...mild },
  { productId: 'demo-refine', ...mild },
  {
    productId: 'demo-iron',
    hazardCodes: ['H302', 'H317', 'H319'],
    precautionaryCodes: ['P261', 'P280', 'P302+P352'],
    signalWord: 'Warning',
    protection: ['nitrile gloves', 'safety glasses', 'apron'],
    storageGroup: 'thioglycolate',
    unNumber: 'none',
    ph: 6.5,
  },
]
