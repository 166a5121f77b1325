import { Group } from '@mantine/core'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'

/** Asks once for the computer's own notifications; without them the app tells everything in its window. */
export function NoticePermission() {
  const [state, setState] = useState(() =>
    typeof Notification === 'undefined' ? 'denied' : Notification.permission,
  )
  if (state !== 'default') return null
  return (
    <Group gap="sm">
      <span className={pieces.soft}>
        {say(
          'Topper windows and releases are told in this window. They can be told over other programs too.',
        )}
      </span>
      <RowButton
        does={say('Allow notifications')}
        onClick={async () => setState(await Notification.requestPermission())}
      />
    </Group>
  )
}
