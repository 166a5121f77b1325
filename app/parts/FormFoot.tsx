import { Alert, Button, Group } from '@mantine/core'
import type { ReactNode } from 'react'
import styles from './FormFoot.module.css'
import type { Faults } from './faults.ts'

interface Props {
  faults: Faults
  busy: boolean
  label?: string
  dirty?: boolean
  /** Another window has saved since: offers to show that. */
  outdated?: boolean
  onReload?: () => void
  children?: ReactNode
}

/** The end of a form: what was refused and belongs to no field, and the button that saves. */
export function FormFoot({
  faults,
  busy,
  label = 'Save',
  dirty = true,
  outdated,
  onReload,
  children,
}: Props) {
  const words = faults.rest()
  const reload = (outdated || faults.stale) && onReload
  return (
    <div className={styles.foot}>
      {outdated && !faults.stale && (
        <Alert color="orange" variant="outline" title="Changed in another window" role="status">
          Saving this would be refused. Look at what is there now, then make your change again.
        </Alert>
      )}
      {words && (
        <Alert color="red" variant="outline" role="alert" style={{ whiteSpace: 'pre-line' }}>
          {words}
        </Alert>
      )}
      <Group>
        <Button type="submit" loading={busy} disabled={!dirty}>
          {label}
        </Button>
        {reload && (
          <Button variant="default" onClick={onReload}>
            Show what is there now
          </Button>
        )}
        {children}
      </Group>
    </div>
  )
}
