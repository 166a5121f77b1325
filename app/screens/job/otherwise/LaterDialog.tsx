import { Button, Checkbox, Group, Modal, Stack, Text } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { JobView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { MomentInput } from '../../../parts/MomentInput.tsx'
import { money } from '../../../parts/money.ts'
import { longWords } from '../../../parts/time.ts'
import { useJobAct } from '../useJobAct.ts'

/** When a car comes that is not here yet, or is fetched that is ready. */
export function LaterDialog({ job, onClose }: { job: JobView; onClose(): void }) {
  const here = job.can.fetchLater
  const feeMinor = useQuery(trpc.money.rules.queryOptions()).data?.keptDayMinor ?? 0
  const [at, setAt] = useState(
    Math.max(job.nowAt, here ? job.handoverAt : job.dropOffAt) + (here ? 1440 : 60),
  )
  const [fee, setFee] = useState(true)
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
        {here && feeMinor > 0 && (
          <Checkbox
            label={say('Put the fee of {fee} a day on its bill', { fee: money(feeMinor, job.currency) })}
            checked={fee}
            onChange={event => setFee(event.currentTarget.checked)}
          />
        )}
        <Group justify="flex-end">
          <Button variant="default" onClick={onClose}>
            {say('Back')}
          </Button>
          <Button
            loading={comes.isPending || fetched.isPending}
            onClick={() => (here ? fetched.mutate({ ...key, fee: fee && feeMinor > 0 }) : comes.mutate(key))}
          >
            {say('Write it down')}
          </Button>
        </Group>
      </Stack>
    </Modal>
  )
}
