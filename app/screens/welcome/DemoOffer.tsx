import { Button } from '@mantine/core'
import type { ShopView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useAct } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import { Say } from '../../parts/Say.tsx'
import styles from './Welcome.module.css'

/** One button to the invented shop, for looking around before setting up one's own. */
export function DemoOffer({ onOpened }: { onOpened(shop: ShopView): void }) {
  const { run, busy, error } = useAct(trpc.shop.openDemo.mutationOptions())
  return (
    <section className={styles.demo} aria-label={say('The demo shop')}>
      <div>
        <Say text="<b>Only looking around?</b> Open an invented shop with four bays, two weeks of bookings and some cars curing now. Your own shop then goes into a data folder of its own." />
        <Refused of={error} />
      </div>
      <Button variant="default" loading={busy} onClick={() => run(onOpened)}>
        {say('Open the demo shop')}
      </Button>
    </section>
  )
}
