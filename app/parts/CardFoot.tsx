import { Alert, Button, Group } from '@mantine/core'
import type { Faults } from './faults.ts'

interface Props {
  faults: Faults
  busy: boolean
  label: string
  dirty?: boolean
  /** Another window has saved since, or did so first: offers to show that. */
  onReload?: (() => void) | undefined
}

/** The end of a small form that is one card among several: what belongs to no field, and its button. */
export function CardFoot({ faults, busy, label, dirty = true, onReload }: Props) {
  const words = faults.rest()
  return (
    <>
      {words && (
        <Alert color="red" variant="outline" role="alert">
          {words}
        </Alert>
      )}
      <Group gap="sm">
        <Button type="submit" loading={busy} disabled={!dirty}>
          {label}
        </Button>
        {onReload && (
          <Button variant="default" onClick={onReload}>
            Show what is there now
          </Button>
        )}
      </Group>
    </>
  )
}
