import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { ProposalView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullDateWords } from '../../parts/time.ts'
import { Why } from '../../parts/Why.tsx'
import type { Acts } from '../upkeep/useActs.tsx'
import styles from './Proposal.module.css'

/** A date the readings would move, in one sentence: nothing moves unless the desk says so. */
export function Proposal({ proposal, acts }: { proposal: ProposalView; acts: Acts }) {
  const [declined, setDeclined] = useState(false)
  const saving = useSaving(trpc.upkeep.acceptProposal.mutationOptions())
  const { planId, what, fromOn, toOn, sentence, why } = proposal
  if (declined)
    return (
      <Group role="status" gap="sm">
        <span className={pieces.soft}>
          {say('Left as it is: due on {fromOn}.', { fromOn: fullDateWords(fromOn) })}
        </span>
        <Button variant="default" size="compact-sm" onClick={() => setDeclined(false)}>
          {say('Look again')}
        </Button>
      </Group>
    )
  return (
    <div role="alert" className={styles.proposal}>
      <Why line={<b>{sentence}</b>} rest={why} />
      <Refused of={saving.error} />
      <Group gap="xs">
        <Button
          variant="default"
          size="compact-md"
          loading={saving.busy}
          onClick={() => saving.save({ planId, what, toOn }, acts.done)}
        >
          {what === 'interval'
            ? say('Renew by this interval from now on')
            : say('Move it to {toOn}', { toOn: fullDateWords(toOn) })}
        </Button>
        <Button size="compact-md" variant="default" onClick={() => setDeclined(true)}>
          {say('Leave it')}
        </Button>
      </Group>
    </div>
  )
}
