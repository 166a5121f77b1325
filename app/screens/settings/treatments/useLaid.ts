import { useState } from 'react'
import type { ProductView } from '../../../../main/api/views.ts'
import { Refusal } from '../../../../main/domain/refusal.ts'
import type { Condition } from '../../../../main/domain/shop/index.ts'
import { type Laid, layOut, type TreatmentTemplate } from '../../../../main/domain/treatment/index.ts'
import type { SizeClass } from '../../../../main/domain/vehicle/index.ts'
import { useShop } from '../../../data/shop.ts'

/** What a treatment comes to, while it is written, on a car of the size and paint that are looked at. */
export function useLaid(treatment: TreatmentTemplate, products: readonly ProductView[]) {
  const { conditionFactors, gridMin, handoverRule } = useShop()
  const [size, setSize] = useState<SizeClass>('medium')
  const [condition, setCondition] = useState<Condition>('good')
  const laid = tryLayOut(() =>
    layOut({
      treatments: [treatment],
      products: new Map(products.map(product => [product.id, product])),
      sizeClass: size,
      finish: 'gloss',
      condition,
      conditionFactors,
      gridMin,
      handoverRule,
      leaving: 'dry',
    }),
  )
  return { size, setSize, condition, setCondition, ...laid }
}

function tryLayOut(lay: () => Laid): { laid: Laid; refused: null } | { laid: null; refused: string } {
  try {
    return { laid: lay(), refused: null }
  } catch (error) {
    if (error instanceof Refusal) return { laid: null, refused: error.message }
    throw error
  }
}
