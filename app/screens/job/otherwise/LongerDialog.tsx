import { Modal, Select, Stack, Text } from '@mantine/core'
import { useState } from 'react'
import type { JobView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { DialogKeys } from '../../../parts/DialogKeys.tsx'
import { DurationInput, MoneyInput } from '../../../parts/inputs.tsx'
import { durationWords } from '../../../parts/time.ts'
import { useJobAct } from '../useJobAct.ts'
import { canTakeLonger } from './canTakeLonger.ts'

/** Work that takes longer than thought: what follows it, and the promise, go with it. */
export function LongerDialog({ job, onClose }: { job: JobView; onClose(): void }) {
  const steps = job.steps.filter(canTakeLonger)
  const first = steps.find(step => step.actualStartAt !== null) ?? steps[0]
  const [position, setPosition] = useState(first?.position ?? 0)
  const [minutes, setMinutes] = useState((first?.minutes ?? 0) + 60)
  const [chargeMinor, setCharge] = useState(0)
  const act = useJobAct(trpc.jobs.stepMinutes.mutationOptions(), onClose)
  const step = steps.find(each => each.position === position)
  return (
    <Modal opened onClose={onClose} title={say('A step takes longer')}>
      <Stack>
        <Text>
          {say(
            'What comes after it moves along. A promise that cannot be kept becomes the new time: tell the customer.',
          )}
        </Text>
        <Select
          label={say('Step')}
          allowDeselect={false}
          data={steps.map(each => ({
            value: String(each.position),
            label: `${each.name}, ${durationWords(each.minutes)}`,
          }))}
          value={String(position)}
          onChange={value => setPosition(Number(value))}
        />
        <DurationInput
          label={say('It takes in all')}
          description={step && say('Booked: {minutes}', { minutes: durationWords(step.minutes) })}
          value={minutes}
          onChange={setMinutes}
          error={act.error ? faultOf(act.error).message : undefined}
        />
        <MoneyInput label={say('Charged for it on top')} value={chargeMinor} onChange={setCharge} />
        <DialogKeys
          act={say('Write it down')}
          busy={act.isPending}
          onAct={() => act.mutate({ id: job.id, version: job.version, position, minutes, chargeMinor })}
          onClose={onClose}
        />
      </Stack>
    </Modal>
  )
}
