import { Button, Checkbox, Group, Modal, Stack, Text } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { JobView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import { useJobAct } from '../useJobAct.ts'

/** Nobody came: what follows is said before, and the shop's fee is offered where it asks one. */
export function NoShowDialog({ job, onClose }: { job: JobView; onClose(): void }) {
  const feeMinor = useQuery(trpc.money.rules.queryOptions()).data?.noShowMinor ?? 0
  const [fee, setFee] = useState(true)
  const act = useJobAct(trpc.booking.noShow.mutationOptions(), onClose)
  return (
    <Modal
      opened
      onClose={onClose}
      title={say('The car of job {number} did not come?', { number: job.number })}
    >
      <Stack>
        <Text>
          {say('Its place and what it borrows become free for others. Its work is not owed any more.')}
        </Text>
        {feeMinor > 0 && (
          <Checkbox
            label={say('Put the fee of {fee} on its bill', { fee: money(feeMinor, job.currency) })}
            checked={fee}
            onChange={event => setFee(event.currentTarget.checked)}
          />
        )}
        <Group justify="flex-end">
          <Button variant="default" onClick={onClose}>
            {say('Back')}
          </Button>
          <Button
            data-autofocus
            loading={act.isPending}
            onClick={() => act.mutate({ id: job.id, version: job.version, fee: fee && feeMinor > 0 })}
          >
            {say('It did not come')}
          </Button>
        </Group>
      </Stack>
    </Modal>
  )
}
