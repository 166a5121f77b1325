import { Button, Group } from '@mantine/core'
import type { ShelfProductView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'

/** A shorter life once opened, where bottles went off before their date. Nothing changes until somebody takes it. */
export function LifeProposal({ product }: { product: ShelfProductView }) {
  const saving = useSaving(trpc.shelf.shortenLife.mutationOptions())
  const keeping = useSaving(trpc.shelf.keepLife.mutationOptions())
  const { id, version, lifeProposal: proposal } = product
  if (!proposal) return null
  const { days, openNow, words } = proposal
  return (
    <Card title={say('It goes off sooner than its date says')}>
      <p>{words}</p>
      <p className={pieces.soft}>
        {openNow > 0 && `${say('{openNow} open now would get the earlier date too.', { openNow })} `}
        {say('The data sheet decides where it gives fewer days.')}
      </p>
      <Group>
        <Button
          variant="default"
          loading={saving.busy}
          onClick={() => saving.save({ productId: id, version, days })}
        >
          {say('Give it {days} {days, plural, one {day} other {days}} once opened', { days })}
        </Button>
        <Button
          variant="default"
          loading={keeping.busy}
          onClick={() => keeping.save({ productId: id, version })}
        >
          {say('Keep it as it is')}
        </Button>
      </Group>
      <Refused of={saving.error ?? keeping.error} />
    </Card>
  )
}
