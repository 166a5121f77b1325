import { Button } from '@mantine/core'
import { type SavingOptions, useSaving } from '../data/saving.ts'
import { faultsOf } from './faults.ts'
import { Refused } from './form/Refused.tsx'

interface Row {
  id: string
  version: number
  archivedAt: number | null
}

interface Props {
  row: Row
  archive: SavingOptions<{ id: string; version: number }>
  /** Left out for what is never taken back. */
  restore?: SavingOptions<{ id: string; version: number }>
  label?: string
  onArchived?: () => void
}

/** Puts a row away or takes it back; what stands in the way is said above the button. */
export function ArchiveButton({ row, archive, restore = {}, label = 'Archive', onArchived }: Props) {
  const archiving = useSaving(archive)
  const restoring = useSaving(restore)
  const words = faultsOf(archiving.error).rest() ?? faultsOf(restoring.error).rest()
  const { id, version } = row
  return (
    <>
      <Refused words={words} />
      <div>
        {row.archivedAt === null ? (
          <Button
            variant="subtle"
            color="red"
            loading={archiving.busy}
            onClick={() => archiving.save({ id, version }, onArchived)}
          >
            {label}
          </Button>
        ) : (
          <Button variant="default" loading={restoring.busy} onClick={() => restoring.save({ id, version })}>
            Take back into use
          </Button>
        )}
      </div>
    </>
  )
}
