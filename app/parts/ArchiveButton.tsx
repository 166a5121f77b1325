import { Button } from '@mantine/core'
import { say } from '../../main/domain/language/index.ts'
import { type SavingOptions, useSaving } from '../data/saving.ts'
import { Refused } from './form/Refused.tsx'

interface Row {
  id: string
  version: number
  archivedAt: number | null
}

type Act = { mutationOptions(): SavingOptions<{ id: string; version: number }> }

interface Props {
  row: Row
  /** The rows' part of the api: `trpc.bays`. */
  api: { archive: Act; restore: Act }
  label: string
  onArchived?: () => void
  onRestored?: () => void
}

/** Puts a row away or takes it back; what stands in the way is said above the button. */
export function ArchiveButton({
  row: { id, version, archivedAt },
  api,
  label,
  onArchived,
  onRestored,
}: Props) {
  const archiving = useSaving(api.archive.mutationOptions())
  const restoring = useSaving(api.restore.mutationOptions())
  const [acting, look, says, done] =
    archivedAt === null
      ? ([archiving, { variant: 'subtle', color: 'red' }, label, onArchived] as const)
      : ([restoring, { variant: 'default' }, say('Restore'), onRestored] as const)
  return (
    <>
      <Refused of={archiving.error ?? restoring.error} />
      <div>
        <Button {...look} loading={acting.busy} onClick={() => acting.save({ id, version }, done)}>
          {says}
        </Button>
      </div>
    </>
  )
}
