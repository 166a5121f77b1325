import { Modal, Stack, Text } from '@mantine/core'
import { DateTimePicker } from '@mantine/dates'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { minuteOf, zonedOf } from '../../../main/domain/calendar/index.ts'
import { clockHoursNow, say } from '../../../main/domain/language/index.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import { DialogKeys } from '../../parts/DialogKeys.tsx'
import { longWords, pickedMoment } from '../../parts/time.ts'
import { useJobAct } from './useJobAct.ts'

/** A new promise, told to the customer: the old one is kept in the history. */
export function PromiseDialog({ job, onClose }: { job: JobView; onClose(): void }) {
  const wall = zonedOf(job.handoverAt, job.zone)
    .toPlainDateTime()
    .toString({ smallestUnit: 'second' })
    .replace('T', ' ')
  const [value, setValue] = useState<string | null>(wall)
  const promise = useJobAct(trpc.jobs.promise.mutationOptions(), onClose)
  const save = () => {
    if (!value) return
    const promisedAt = minuteOf(
      Temporal.PlainDateTime.from(value.replace(' ', 'T')).toZonedDateTime(job.zone),
    )
    promise.mutate({ id: job.id, version: job.version, promisedAt })
  }
  const times = {
    promisedAt: longWords(job.promisedAt, job.zone, job.nowAt),
    handoverAt: longWords(job.handoverAt, job.zone, job.nowAt),
  }
  return (
    <Modal opened onClose={onClose} title={say('New promise')}>
      <Stack>
        <Text>
          {job.coated
            ? say('Promised: {promisedAt}. Now expected: {handoverAt}; by its profile not before {safeAt}.', {
                ...times,
                safeAt: longWords(job.safeAt, job.zone, job.nowAt),
              })
            : say('Promised: {promisedAt}. Now expected: {handoverAt}.', times)}
        </Text>
        <DateTimePicker
          label={say('Promise instead')}
          value={value}
          onChange={setValue}
          valueFormat={pickedMoment()}
          timePickerProps={{ format: clockHoursNow() === 24 ? '24h' : '12h' }}
          error={promise.error ? faultOf(promise.error).message : undefined}
        />
        <DialogKeys act={say('Promise this')} busy={promise.isPending} onAct={save} onClose={onClose} />
      </Stack>
    </Modal>
  )
}
