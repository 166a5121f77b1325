import { Select, Stack } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import type { Channel, VisitView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Dialog } from '../../../parts/form/Dialog.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { choicesOf } from '../../../parts/shopWords.ts'
import { channelWords } from '../words.ts'

/** Whether a reminder may be written by hand: nothing is booked, and no other one is under way. */
export function mayWrite({ booking, reminder }: VisitView): boolean {
  return (
    booking === null && (reminder === null || reminder.state === 'sent' || reminder.state === 'withdrawn')
  )
}

interface Props {
  visit: VisitView
  channel: Channel
  onClose(): void
}

/** One visit's reminder, written because the desk says so; it is reviewed like the others. */
export function WriteDialog({ visit, channel, onClose }: Props) {
  const navigate = useNavigate()
  const known = useQuery(trpc.templates.list.queryOptions()).data?.templates ?? []
  const templates = known.filter(template => template.channel === channel)
  const { planId, ruleOn } = visit
  const form = useForm({
    saved: { templateId: null as string | null },
    saving: trpc.reminders.write.mutationOptions(),
    send: ({ templateId }) => {
      const id = templateId ?? templates[0]?.id
      return { planId, ruleOn, channel, ...(id && { templateId: id }) }
    },
    done: ({ id }) => {
      onClose()
      void navigate({ to: '/upkeep/$section/$id', params: { section: 'reminders', id } })
    },
  })
  const { faults } = form
  const label = say('Write a reminder to {customerName}', { customerName: visit.customerName })
  return (
    <Dialog onClose={onClose} title={label}>
      <Form form={form} label={label} save={say('Write it')} onCancel={onClose}>
        <Stack gap="sm">
          <p style={{ margin: 0 }}>
            {say(
              '{channelWords} about {title} of {plate}. Two free times are looked for and held; it goes out once it is approved.',
              { channelWords: channelWords[channel], title: visit.title, plate: visit.plate },
            )}
          </p>
          <Select
            label={say('Template')}
            data-autofocus
            data={choicesOf(templates)}
            allowDeselect={false}
            {...form.field('templateId')}
            value={form.value.templateId ?? templates[0]?.id ?? null}
            error={faults.at('templateId') ?? faults.at('channel')}
          />
        </Stack>
      </Form>
    </Dialog>
  )
}
