import type { AdviceView } from '../../../main/services/shelfViews.ts'
import styles from './shelf.module.css'

const titles: Record<Exclude<AdviceView['kind'], 'order'>, string> = {
  enough: 'Enough ✓',
  onTheWay: 'Nothing to order',
  check: 'Look at this one',
}

/** "Order 3 packs" */
export function adviceTitle({ kind, packs }: Pick<AdviceView, 'kind' | 'packs'>): string {
  return kind === 'order' ? `Order ${packs} ${packs === 1 ? 'pack' : 'packs'}` : titles[kind]
}

/** What to do about a product and why: the first sentence says it all, the others follow. */
export function AdviceWords({ advice }: { advice: AdviceView }) {
  return (
    <div className={styles.advice} data-kind={advice.kind}>
      <b>{adviceTitle(advice)}</b>
      {advice.words.map(words => (
        <small key={words}>{words}</small>
      ))}
    </div>
  )
}
