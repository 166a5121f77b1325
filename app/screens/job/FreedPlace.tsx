import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'

/** A place came free by this job, called off, moved or gone early: who of the waiting list fits it. */
export function FreedPlace({ job }: { job: JobView }) {
  const freed = useQuery(trpc.waiting.freed.queryOptions({ freedJobId: job.id })).data ?? 0
  if (freed === 0) return null
  return (
    <Button component="a" variant="default" href={`/book?freed=${job.id}`}>
      {say('Who on the waiting list fits?')}
    </Button>
  )
}
