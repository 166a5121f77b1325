import { Button } from '@mantine/core'
import type { JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { LentKind } from '../../../main/domain/shop/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Fact } from '../../parts/Facts.tsx'
import { RowButton } from '../../parts/RowButton.tsx'
import { useJobAct } from './useJobAct.ts'

const lending: Readonly<Record<LentKind, string>> = {
  'loan car': say('Lend a loan car'),
  'key box': say('Lend a key box'),
  'covered place': say('Lend a covered place'),
}

/** What the customer borrows meanwhile, and the way to lend more or take it back. */
export function Lent({ job }: { job: JobView }) {
  const lend = useJobAct(trpc.jobs.lend.mutationOptions())
  const key = { id: job.id, version: job.version }
  const more = job.can.move || job.can.promise ? job.lendKinds : []
  const open = more.filter(kind => !job.lent.some(each => each.kind === kind))
  if (job.lent.length === 0 && open.length === 0) return null
  return (
    <Fact name={say('Lent with it')}>
      {job.lent.map(({ name, kind }) => (
        <span key={kind}>
          {name}{' '}
          {more.length > 0 && (
            <RowButton
              does={say('Take back')}
              of={name}
              size="compact-xs"
              disabled={lend.isPending}
              onClick={() => lend.mutate({ ...key, kind, on: false })}
            />
          )}{' '}
        </span>
      ))}
      {open.map(kind => (
        <Button
          key={kind}
          size="compact-xs"
          variant="default"
          loading={lend.isPending}
          onClick={() => lend.mutate({ ...key, kind, on: true })}
        >
          {lending[kind]}
        </Button>
      ))}
    </Fact>
  )
}
