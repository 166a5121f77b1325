import { Alert, CopyButton, Group, Stack, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { BayConditionsView, ConditionsView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { Say } from '../../parts/Say.tsx'
import { nearWords } from '../../parts/time.ts'

/** The sensors of a bay: each has a token of its own, shown once, and may be told to stop. */
export function Sensors({ bay, view }: { bay: BayConditionsView; view: ConditionsView }) {
  const [token, setToken] = useState<string | null>(null)
  const form = useForm({
    saved: { name: '' },
    saving: trpc.sensors.createToken.mutationOptions(),
    send: value => ({ ...value, bayId: bay.bayId }),
    done: made => setToken(made.token),
  })
  const stopping = useSaving(trpc.sensors.revoke.mutationOptions())
  return (
    <Card title={say('Sensors')}>
      {bay.sensors.length === 0 && (
        <p className={pieces.soft}>
          {say(
            'None yet. A sensor, or a small script beside it, posts its readings to this app with a token of its own.',
          )}
        </p>
      )}
      <Stack gap={6} mb="sm">
        {bay.sensors.map(sensor => (
          <Group key={sensor.id} gap="sm" justify="space-between">
            <span>
              {sensor.name}{' '}
              <span className={pieces.soft}>
                {sensor.lastAt === null
                  ? say('has not posted yet')
                  : say('last {lastAt}', { lastAt: nearWords(sensor.lastAt, view.zone, view.nowAt) })}
              </span>
            </span>
            <RowButton
              does={say('Revoke')}
              of={say('the token of {name}', { name: sensor.name })}
              disabled={stopping.busy}
              onClick={() => stopping.save({ id: sensor.id })}
            />
          </Group>
        ))}
      </Stack>
      <Form
        form={form}
        label={say('Add a sensor to {bayName}', { bayName: bay.bayName })}
        save={say('Make its token')}
      >
        <TextInput
          label={say('Name of a new sensor')}
          placeholder={say('by the door')}
          {...form.field('name')}
        />
      </Form>
      {token && (
        <Alert
          mt="sm"
          variant="outline"
          title={say('Copy the token now: it is shown this once')}
          role="status"
        >
          <pre className={pieces.quoted}>{token}</pre>
          <CopyButton value={token}>
            {({ copied, copy }) => <RowButton does={copied ? say('Copied ✓') : say('Copy')} onClick={copy} />}
          </CopyButton>
        </Alert>
      )}
      <details>
        <summary>{say('How a sensor posts')}</summary>
        <p className={pieces.soft}>
          <Say
            text="To this address of the browser host ({command}), from this computer, at most 60 times a minute, 500 readings or 64 KB at once. {time} is an instant with its offset, or wall time of the shop; {unit} is C or F; humidity, dewPoint and panel may be left out. The answer says how many were kept and which rows were refused and why; posting a reading again is harmless."
            values={{
              command: <code>npm start -- --host web</code>,
              time: <code>time</code>,
              unit: <code>unit</code>,
            }}
          />
        </p>
        <pre className={pieces.quoted}>
          {[
            `POST ${location.protocol.startsWith('http') ? location.origin : 'http://127.0.0.1:<port>'}/sensor/readings`,
            'Authorization: Bearer <token>',
            'Content-Type: application/json',
            '',
            '{"unit": "C", "readings": [',
            '  {"time": "2026-04-15T07:40:00Z",',
            '   "air": 17.5, "humidity": 46, "panel": 16.9}',
            ']}',
          ].join('\n')}
        </pre>
      </details>
    </Card>
  )
}
