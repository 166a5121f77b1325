import type { AdviceFacts, ShelfUnit } from '../../../main/services/shelfViews.ts'
import { money } from '../money.ts'
import { CoverCurve } from './CoverCurve.tsx'
import { SizeBars } from './SizeBars.tsx'
import styles from './shelf.module.css'

interface Props {
  facts: AdviceFacts
  unit: ShelfUnit
  currency: string
}

/** Every number behind an advice with its sentence, and the two pictures it rests on. */
export function AdviceNumbers({ facts, unit, currency }: Props) {
  return (
    <div className={styles.numbers}>
      <dl>
        {facts.sentences.map(({ name, value, words }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <b>{value}</b> {words}
            </dd>
          </div>
        ))}
      </dl>
      {facts.within.length > 1 && <CoverCurve facts={facts} unit={unit} />}
      {facts.sizes.length > 0 && <SizeBars sizes={facts.sizes} show={minor => money(minor, currency)} />}
    </div>
  )
}
