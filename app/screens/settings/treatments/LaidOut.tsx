import type { ProductView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { Refusal } from '../../../../main/domain/refusal.ts'
import { layOut, type TreatmentTemplate } from '../../../../main/domain/treatment/index.ts'
import { useShop } from '../../../data/shop.ts'
import { durationText } from '../../../parts/durationText.ts'
import styles from './Treatments.module.css'

interface Props {
  treatment: TreatmentTemplate
  products: ProductView[]
}

/** What the steps come to on a medium car in good paint, cure holds between them, while they are being written. */
export function LaidOut({ treatment, products }: Props) {
  const { conditionFactors, gridMin, handoverRule } = useShop()
  const laid = tryLayOut(() =>
    layOut({
      treatments: [treatment],
      products: new Map(products.map(product => [product.id, product])),
      sizeClass: 'medium',
      finish: 'gloss',
      condition: 'good',
      conditionFactors,
      gridMin,
      handoverRule,
      leaving: 'dry',
    }),
  )
  if (typeof laid === 'string') return <p className={styles.laidOut}>{laid}</p>
  return (
    <div className={styles.laidOut}>
      <span>
        {say('On a medium car in good paint, {handsOnMin} hands-on:', {
          handsOnMin: durationText(laid.handsOnMin),
        })}
      </span>
      <ol>
        {laid.steps.map((step, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the chain has no other order than its own
          <li key={i} data-kind={step.kind}>
            {step.name || say('Step without a name')} <small>{durationText(step.minutes)}</small>
          </li>
        ))}
      </ol>
      {laid.notes.map(note => (
        <small key={note}>{note}</small>
      ))}
    </div>
  )
}

function tryLayOut<T>(lay: () => T): T | string {
  try {
    return lay()
  } catch (error) {
    if (error instanceof Refusal) return error.message
    throw error
  }
}
