import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import styles from './Conditions.module.css'

/** Asks once for the computer's own notifications; without them the app tells everything in its window. */
export function NoticePermission() {
  const [state, setState] = useState(() =>
    typeof Notification === 'undefined' ? 'denied' : Notification.permission,
  )
  if (state !== 'default') return null
  return (
    <Group gap="sm">
      <span className={styles.soft}>
        Topper windows and releases are told in this window. They can be told over other programs too.
      </span>
      <Button
        size="compact-sm"
        variant="default"
        onClick={async () => setState(await Notification.requestPermission())}
      >
        Allow notifications
      </Button>
    </Group>
  )
}
