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

interface Props {
  advice: AdviceView
  /** So many sentences of it; the first one says it all. */
  most?: number
}

/** What to do about a product and why. */
export function AdviceWords({ advice, most }: Props) {
  return (
    <div className={styles.advice} data-kind={advice.kind}>
      <b>{adviceTitle(advice)}</b>
      {advice.words.slice(0, most).map(words => (
        <small key={words}>{words}</small>
      ))}
    </div>
  )
}

/** The same in one sentence; the reasons behind it are there to be opened. */
export function AdviceInShort({ advice }: { advice: AdviceView }) {
  const reasons = advice.words.slice(1)
  return (
    <>
      <AdviceWords advice={advice} most={1} />
      {reasons.length > 0 && (
        <details className={styles.why}>
          <summary>{say('Why')}</summary>
          {reasons.map(words => (
            <p key={words}>{words}</p>
          ))}
        </details>
      )}
    </>
  )
}
