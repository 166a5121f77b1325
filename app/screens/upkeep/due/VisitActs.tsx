import { Button, Menu, Stack, TextInput } from '@mantine/core'
import { IconChevronDown } from '@tabler/icons-react'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { ActView, Channel, VisitView } from '../../../../main/api/views.ts'
import { say, withinSentence } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import type { SavingOptions } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { DateField } from '../../../parts/DateField.tsx'
import { Dialog } from '../../../parts/form/Dialog.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { dateWords } from '../../../parts/time.ts'
import { useBookFor } from '../../book/useBookFor.ts'
import type { Acts } from '../useActs.tsx'
import { channelWords } from '../words.ts'
import own from './Due.module.css'
import { mayWrite, WriteDialog } from './WriteDialog.tsx'

type Act = 'done' | 'move' | 'skip'

/** Whether something is to be done about a visit: its owner asked, or a time booked. */
export function mayAct(visit: VisitView): boolean {
  return visit.booking === null || (mayWrite(visit) && visit.channels.length > 0)
}

interface Props {
  visit: VisitView
  today: string
  acts: Acts
  /** Leaves the filled button to another act of its screen. */
  quiet?: boolean
}

/** What can be done about one visit; each can be taken back. */
export function VisitActs({ visit, today, acts, quiet = false }: Props) {
  const [asking, setAsking] = useState<Act | null>(null)
  const [writing, setWriting] = useState<Channel | null>(null)
  const bookFor = useBookFor()
  const first = mayWrite(visit) ? ways.find(way => visit.channels.includes(way)) : undefined
  return (
    <div className={own.acts}>
      {first && (
        <Button
          size="compact-sm"
          variant={quiet ? 'default' : 'filled'}
          aria-label={say('{asks} about {plate}, {title}', {
            asks: asks[first],
            plate: visit.plate,
            title: visit.title,
          })}
          onClick={() => setWriting(first)}
        >
          {asks[first]}
        </Button>
      )}
      {visit.booking === null && (
        <Button
          size="compact-sm"
          variant={quiet || first ? 'default' : 'filled'}
          aria-label={say('Book {plate}, {title}', { plate: visit.plate, title: visit.title })}
          onClick={() =>
            void bookFor(visit.customerId, visit.vehicleId, visit.dueOn > today ? visit.dueOn : null)
          }
        >
          {say('Book||a visit')}
        </Button>
      )}
      <Button
        variant="default"
        size="compact-sm"
        aria-label={say('Skip {title} of {plate}', { plate: visit.plate, title: visit.title })}
        onClick={() => setAsking('skip')}
      >
        {titles.skip}
      </Button>
      <Menu position="bottom-end" withinPortal>
        <Menu.Target>
          <Button
            variant="default"
            size="compact-sm"
            rightSection={<IconChevronDown size="0.9rem" aria-hidden="true" />}
            aria-label={say('More acts: {plate}, {title}', {
              plate: visit.plate,
              title: visit.title,
            })}
          >
            {say('More||acts')}
          </Button>
        </Menu.Target>
        <Menu.Dropdown>
          {(['done', 'move'] as const).map(act => (
            <Menu.Item key={act} onClick={() => setAsking(act)}>
              {titles[act]} …
            </Menu.Item>
          ))}
          {mayWrite(visit) &&
            visit.channels.map(channel => (
              <Menu.Item key={channel} onClick={() => setWriting(channel)}>
                {say('Write a reminder: {channelWords} …', {
                  channelWords: withinSentence(channelWords[channel]),
                })}
              </Menu.Item>
            ))}
          <Menu.Item component={Link} to="/cars/$id" params={{ id: visit.vehicleId } as never}>
            {say('Open the car')}
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
          onDone={acts.done}
        />
      )}
    </div>
  )
}

/** How an owner is asked, the least trouble to both first, and what that is called on its button. */
const ways = ['email', 'text', 'call', 'letter'] as const satisfies readonly Channel[]
const asks: Record<Channel, string> = {
  email: say('Write'),
  text: say('Text'),
  call: say('Call||an owner'),
  letter: say('Letter'),
}

interface DialogProps {
  act: Act
  visit: VisitView
  today: string
  onClose(): void
  onDone(act: ActView): void
}

const titles: Record<Act, string> = {
  done: say('Done||a visit'),
  move: say('Another day'),
  skip: say('Skip'),
}

function ActDialog({ act, visit, today, onClose, onDone }: DialogProps) {
  const options = {
    done: trpc.upkeep.done.mutationOptions(),
    move: trpc.upkeep.move.mutationOptions(),
    skip: trpc.upkeep.skip.mutationOptions(),
  }[act] as SavingOptions<object, ActView>
  const { planId, ruleOn } = visit
  const form = useForm({
    // Nobody agrees on a day that is over.
    saved: { on: act === 'done' || visit.dueOn < today ? today : visit.dueOn, why: '' },
    saving: options,
    send: ({ on, why }) =>
      ({
        done: { planId, ruleOn, on },
        move: { planId, ruleOn, to: on, why },
        skip: { planId, ruleOn, why },
      })[act],
    done: done => {
      onDone(done)
      onClose()
    },
  })
  return (
    <Dialog onClose={onClose} title={`${titles[act]}: ${visit.title}, ${visit.plate}`}>
      <Form form={form} label={titles[act]} save={titles[act]} onCancel={onClose}>
        <Stack gap="sm">
          <p style={{ margin: 0 }}>{say('It is due on {dueOn}.', { dueOn: dateWords(visit.dueOn) })}</p>
          {act !== 'skip' && (
            <DateField
              label={act === 'done' ? say('Done on') : say('Agreed for')}
              data-autofocus
              {...form.field('on')}
              error={form.faults.at('on') ?? form.faults.at('to')}
            />
          )}
          {act !== 'done' && (
            <TextInput
              label={say('Why')}
              description={say('For whoever looks at the car later; may stay empty')}
              {...form.field('why')}
            />
          )}
        </Stack>
      </Form>
    </Dialog>
  )
}
