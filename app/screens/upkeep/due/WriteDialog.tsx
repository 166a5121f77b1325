import { Button, Modal, Select, Stack } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import type { Channel, VisitView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
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
  const [chosen, setChosen] = useState<string | null>(null)
  const templateId = chosen ?? templates[0]?.id
  const saving = useSaving(trpc.reminders.write.mutationOptions())
  const faults = faultsOf(saving.error)
  const { planId, ruleOn } = visit
  const save = () =>
    saving.save({ planId, ruleOn, channel, ...(templateId && { templateId }) }, ({ id }) => {
      onClose()
      void navigate({ to: '/upkeep/$section/$id', params: { section: 'reminders', id } })
    })
  const label = `Write a reminder to ${visit.customerName}`
  return (
    <Modal opened onClose={onClose} title={label} closeButtonProps={{ 'aria-label': 'Close' }}>
      <Form error={saving.error} label={label} onSave={save}>
        <Stack gap="sm">
          <p style={{ margin: 0 }}>
            {channelWords[channel]} about {visit.title} of {visit.plate}. Two free times are looked for and
            held; it goes out once it is approved.
          </p>
          <Select
            label="Template"
            data-autofocus
            data={templates.map(template => ({ value: template.id, label: template.name }))}
            allowDeselect={false}
            value={templateId ?? null}
            onChange={setChosen}
            error={faults.at('templateId') ?? faults.at('channel')}
          />
          <FormFoot faults={faults} busy={saving.busy} label="Write it">
            <Button variant="default" onClick={onClose}>
              Not now
            </Button>
          </FormFoot>
        </Stack>
      </Form>
    </Modal>
  )
}
