import { Button, Menu, Modal, Stack, TextInput } from '@mantine/core'
import { IconChevronDown } from '@tabler/icons-react'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { ActView, Channel, VisitView } from '../../../../main/api/views.ts'
import { type SavingOptions, useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DateField } from '../../../parts/inputs.tsx'
import { dateWords } from '../../../parts/time.ts'
import type { Acts } from '../useActs.tsx'
import { channelWords } from '../words.ts'
import { mayWrite, WriteDialog } from './WriteDialog.tsx'

type Act = 'done' | 'move' | 'skip'

/** What can be done about one visit; each can be taken back. */
export function VisitActs({ visit, today, acts }: { visit: VisitView; today: string; acts: Acts }) {
  const [asking, setAsking] = useState<Act | null>(null)
  const [writing, setWriting] = useState<Channel | null>(null)
  return (
    <>
      <Menu position="bottom-end" withinPortal>
        <Menu.Target>
          <Button
            variant="default"
            size="compact-sm"
            rightSection={<IconChevronDown size="0.9rem" aria-hidden="true" />}
            aria-label={`Do something about ${visit.plate}, ${visit.title}`}
          >
            Do
          </Button>
        </Menu.Target>
        <Menu.Dropdown>
          <Menu.Item onClick={() => setAsking('done')}>It was done …</Menu.Item>
          <Menu.Item onClick={() => setAsking('move')}>Another day was agreed …</Menu.Item>
          <Menu.Item onClick={() => setAsking('skip')}>Leave it out this time …</Menu.Item>
          {mayWrite(visit) &&
            visit.channels.map(channel => (
              <Menu.Item key={channel} onClick={() => setWriting(channel)}>
                Write a reminder: {channelWords[channel].toLowerCase()} …
              </Menu.Item>
            ))}
          <Menu.Item component={Link} to="/cars/$id" params={{ id: visit.vehicleId } as never}>
            Open the car
          </Menu.Item>
        </Menu.Dropdown>
      </Menu>
      {writing && <WriteDialog visit={visit} channel={writing} onClose={() => setWriting(null)} />}
      {asking && (
        <ActDialog
          act={asking}
          visit={visit}
          today={today}
          onClose={() => setAsking(null)}
          onDone={acts.told}
        />
      )}
    </>
  )
}

interface DialogProps {
  act: Act
  visit: VisitView
  today: string
  onClose(): void
  onDone(act: ActView): void
}

const titles: Record<Act, string> = {
  done: 'It was done',
  move: 'Another day was agreed',
  skip: 'Leave it out this time',
}

function ActDialog({ act, visit, today, onClose, onDone }: DialogProps) {
  const [on, setOn] = useState(act === 'done' ? today : visit.dueOn)
  const [why, setWhy] = useState('')
  const options = {
    done: trpc.upkeep.done.mutationOptions(),
    move: trpc.upkeep.move.mutationOptions(),
    skip: trpc.upkeep.skip.mutationOptions(),
  }[act] as SavingOptions<object, ActView>
  const saving = useSaving(options)
  const faults = faultsOf(saving.error)
  const { planId, ruleOn } = visit
  const input = {
    done: { planId, ruleOn, on },
    move: { planId, ruleOn, to: on, why },
    skip: { planId, ruleOn, why },
  }[act]
  return (
    <Modal
      opened
      onClose={onClose}
      title={`${titles[act]}: ${visit.title}, ${visit.plate}`}
      closeButtonProps={{ 'aria-label': 'Close' }}
    >
      <Form
        error={saving.error}
        label={titles[act]}
        onSave={() =>
          saving.save(input, done => {
            onDone(done)
            onClose()
          })
        }
      >
        <Stack gap="sm">
          <p style={{ margin: 0 }}>It is due on {dateWords(visit.dueOn)}.</p>
          {act !== 'skip' && (
            <DateField
              label={act === 'done' ? 'Done on' : 'Agreed for'}
              data-autofocus
              value={on}
              onChange={setOn}
              error={faults.at('on') ?? faults.at('to')}
            />
          )}
          {act !== 'done' && (
            <TextInput
              label="Why"
              description="For whoever looks at the car later; may stay empty"
              value={why}
              onChange={event => setWhy(event.currentTarget.value)}
              error={faults.at('why')}
            />
          )}
          <FormFoot faults={faults} busy={saving.busy} label={titles[act]}>
            <Button variant="default" onClick={onClose}>
              Not now
            </Button>
          </FormFoot>
        </Stack>
      </Form>
    </Modal>
  )
}
