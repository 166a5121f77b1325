import { Modal, Stack, Text } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { DialogKeys } from '../../../parts/DialogKeys.tsx'
import { MomentInput } from '../../../parts/MomentInput.tsx'
import { longWords } from '../../../parts/time.ts'
import { useJobAct } from '../useJobAct.ts'
import { useFee } from './useFee.tsx'

/** When a car comes that is not here yet, or is fetched that is ready. */
export function LaterDialog({ job, onClose }: { job: JobView; onClose(): void }) {
  const here = job.can.fetchLater
  const { fee, tick } = useFee('keptDayMinor', job, fee =>
    say('Put the fee of {fee} a day on its bill', { fee }),
  )
  const [at, setAt] = useState(
    Math.max(job.nowAt, here ? job.handoverAt : job.dropOffAt) + (here ? 1440 : 60),
  )
  const comes = useJobAct(trpc.booking.comesLater.mutationOptions(), onClose)
  const fetched = useJobAct(trpc.booking.fetchLater.mutationOptions(), onClose)
  const error = comes.error ?? fetched.error
  const key = { id: job.id, version: job.version, at }
  return (
    <Modal opened onClose={onClose} title={here ? say('It is fetched later') : say('The car comes later')}>
      <Stack>
        <Text>
          {here
            ? say('Its bay is kept until then, and others cannot have it.')
            : say(
                'Its work is laid anew from then on. Promised stays {promisedAt} until you promise another time.',
                {
                  promisedAt: longWords(job.promisedAt, job.zone, job.nowAt),
                },
              )}
        </Text>
        <MomentInput
          label={here ? say('Fetched') : say('Comes')}
          value={at}
          onChange={setAt}
          error={error ? faultOf(error).message : undefined}
        />
        {here && tick}
        <DialogKeys
          act={say('Write it down')}
          busy={comes.isPending || fetched.isPending}
          onAct={() => (here ? fetched.mutate({ ...key, fee }) : comes.mutate(key))}
          onClose={onClose}
        />
      </Stack>
    </Modal>
  )
}
