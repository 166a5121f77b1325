import type { AdviceView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import styles from './shelf.module.css'

const titles: Record<Exclude<AdviceView['kind'], 'order'>, string> = {
  enough: say('Enough ✓'),
  onTheWay: say('Nothing to order'),
  check: say('Look at this one'),
}

/** "Order 3 packs" */
export function adviceTitle({ kind, packs }: Pick<AdviceView, 'kind' | 'packs'>): string {
  return kind === 'order'
    ? say('Order {packs} {packs, plural, one {pack} other {packs}}', { packs })
    : titles[kind]
}

/** What to do about a product, and why in one sentence. */
export function AdviceWords({ advice }: { advice: AdviceView }) {
  return (
    <div className={styles.advice} data-kind={advice.kind}>
      <b>{adviceTitle(advice)}</b>
      <small>{advice.words[0]}</small>
    </div>
  )
}
