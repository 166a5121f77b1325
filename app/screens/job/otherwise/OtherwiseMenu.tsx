import { Button, Menu } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { ChangeDialog } from './ChangeDialog.tsx'
import { canTakeLonger } from './canTakeLonger.ts'
import { LaterDialog } from './LaterDialog.tsx'
import { LongerDialog } from './LongerDialog.tsx'
import { NoShowDialog } from './NoShowDialog.tsx'

const dialogs = {
  rebook: { label: say('Another day, or other work…'), Dialog: ChangeDialog },
  longer: { label: say('A step takes longer…'), Dialog: LongerDialog },
  comesLater: { label: say('The car comes later…'), Dialog: LaterDialog },
  noShow: { label: say('The car did not come…'), Dialog: NoShowDialog },
  fetchLater: { label: say('It is fetched later…'), Dialog: LaterDialog },
} as const
type What = keyof typeof dialogs

/** What may be said of a booking that goes otherwise, each in a window of its own. */
export function OtherwiseMenu({ job }: { job: JobView }) {
  // With the job as it was when the window was opened: what is filled in was meant for that, whoever changes it meanwhile.
  const [open, setOpen] = useState<{ what: What; seen: JobView } | null>(null)
  const longer = job.can.move && job.steps.some(canTakeLonger)
  const isOpen = (what: What) => (what === 'longer' ? longer : job.can[what])
  const shown = (Object.keys(dialogs) as What[]).filter(isOpen)
  if (shown.length === 0) return null
  const Dialog = open && dialogs[open.what].Dialog
  return (
    <>
      <Menu position="bottom-end">
        <Menu.Target>
          <Button variant="default">{say('Something changed…')}</Button>
        </Menu.Target>
        <Menu.Dropdown>
          {shown.map(what => (
            <Menu.Item key={what} onClick={() => setOpen({ what, seen: job })}>
              {dialogs[what].label}
            </Menu.Item>
          ))}
        </Menu.Dropdown>
      </Menu>
      {Dialog && <Dialog job={open.seen} onClose={() => setOpen(null)} />}
    </>
  )
}
