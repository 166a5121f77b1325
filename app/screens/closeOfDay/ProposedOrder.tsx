import type { ProposedOrderView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { money } from '../../parts/money.ts'
import { Say } from '../../parts/Say.tsx'
import { dateWords } from '../../parts/time.ts'
import { Why } from '../../parts/Why.tsx'
import styles from '../shelf/orders/Orders.module.css'

interface Props {
  order: ProposedOrderView
  currency: string
}

/** What would be ordered from one supplier, when it would be here, and why. */
export function ProposedOrder({ order, currency }: Props) {
  return (
    <div className={styles.order}>
      <header>
        <h3>
          <Say text="{supplierName} <small>proposed</small>" values={{ supplierName: order.supplierName }} />
        </h3>
        <span>
          <b>{money(order.totalMinor, currency)}</b>
          <small>
            {order.carriageMinor > 0 &&
              ` ${say('with {carriageMinor} carriage', { carriageMinor: money(order.carriageMinor, currency) })}`}{' '}
            {say('· here {expectedOn}', { expectedOn: dateWords(order.expectedOn) })}
          </small>
        </span>
      </header>
      <Why
        line={order.lines
          .map(({ packs, containersPerPack, sizeLabel, productName }) =>
            [packs, containersPerPack > 1 && containersPerPack, `${sizeLabel} ${productName}`]
              .filter(Boolean)
              .join(' × '),
          )
          .join(' · ')}
        rest={[...order.lines.flatMap(line => line.why.slice(0, 1)), ...order.notes]}
      />
    </div>
  )
}
