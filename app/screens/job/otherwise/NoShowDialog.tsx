import { Modal, Stack, Text } from '@mantine/core'
import type { JobView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { DialogKeys } from '../../../parts/DialogKeys.tsx'
import { useJobAct } from '../useJobAct.ts'
import { useFee } from './useFee.tsx'

/** Nobody came: what follows is said before, and the shop's fee is offered where it asks one. */
export function NoShowDialog({ job, onClose }: { job: JobView; onClose(): void }) {
  const { fee, tick } = useFee('noShowMinor', job, fee => say('Put the fee of {fee} on its bill', { fee }))
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
        {tick}
        <DialogKeys
          autofocus
          act={say('It did not come')}
          busy={act.isPending}
          onAct={() => act.mutate({ id: job.id, version: job.version, fee })}
          onClose={onClose}
        />
      </Stack>
    </Modal>
  )
}
