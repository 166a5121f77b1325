import { Button, Text } from '@mantine/core'
import type { ShopView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { faultsOf } from '../../parts/faults.ts'
import styles from './Welcome.module.css'

/** One button to the invented shop, for looking around before setting up one's own. */
export function DemoOffer({ onOpened }: { onOpened(shop: ShopView): void }) {
  const { mutationFn } = trpc.shop.openDemo.mutationOptions()
  const demo = useSaving({ mutationFn: (_: object, context) => mutationFn!(undefined, context) })
  const words = faultsOf(demo.error).rest()
  return (
    <section className={styles.demo} aria-label="The demo shop">
      <div>
        <b>Only looking around?</b> Open an invented shop with four bays, two weeks of bookings and some cars
        curing now. Your own shop then goes into a data folder of its own.
        {words && (
          <Text c="var(--mantine-color-error)" size="sm" role="alert">
            {words}
          </Text>
        )}
      </div>
      <Button variant="default" loading={demo.busy} onClick={() => demo.save({}, onOpened)}>
        Open the demo shop
      </Button>
    </section>
  )
}
