import { Button, Group, Select, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { Channel, ConsentsView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { longWords } from '../../parts/time.ts'
import { channelChoices, channelWords } from '../upkeep/words.ts'
import styles from './Customers.module.css'
import { ReachForm } from './ReachForm.tsx'

/** What this owner agrees to be reached by, and everything ever said about it. */
export function Consents({ customerId }: { customerId: string }) {
  const consents = useQuery(trpc.consents.list.queryOptions({ customerId })).data
  const [form, setForm] = useState<'give' | 'withdraw' | 'reach' | null>(null)
  if (!consents) return null
  const close = () => setForm(null)
  return (
    <section className={styles.card} aria-labelledby="consent">
      <h2 id="consent">May be reminded by</h2>
      <ul className={styles.list}>
        {consents.states.map(({ channel, address, state, words }) => (
          <li key={channel}>
            <span className={styles.way}>
              {state?.given ? '✓' : '–'} {channelWords[channel]}
            </span>
            <span className={styles.grow}>
              {words}
              {address !== null && <small>{address}</small>}
            </span>
          </li>
        ))}
      </ul>
      {form === null && (
        <Group mt="sm" gap="sm">
          <Button variant="default" onClick={() => setForm('give')}>
            They agree to one
          </Button>
          <Button variant="default" onClick={() => setForm('withdraw')}>
            They want no more
          </Button>
          <Button variant="default" onClick={() => setForm('reach')}>
            Language and postal address
          </Button>
        </Group>
      )}
      {form === 'give' && <GiveForm consents={consents} onDone={close} />}
      {form === 'withdraw' && <WithdrawForm consents={consents} onDone={close} />}
      {form === 'reach' && <ReachForm consents={consents} onDone={close} />}
      {consents.ledger.length > 0 && <Ledger consents={consents} />}
    </section>
  )
}

interface FormProps {
  consents: ConsentsView
  onDone(): void
}

function GiveForm({ consents, onDone }: FormProps) {
  const first = consents.states.find(each => each.address !== null && !each.state?.given)
  const [channel, setChannel] = useState<Channel>(first?.channel ?? 'email')
  const [source, setSource] = useState('')
  const [wording, setWording] = useState('')
  const saving = useSaving(trpc.consents.give.mutationOptions())
  const faults = faultsOf(saving.error)
  const { customerId } = consents
  return (
    <Form
      error={saving.error}
      label="They agree to be reminded"
      onSave={() => saving.save({ customerId, channel, source, wording }, onDone)}
    >
      <p className={styles.soft}>
        Write down what they said and where: whether it is enough is for local law, which this program does
        not know.
      </p>
      <Select
        label="By"
        data={channelChoices}
        allowDeselect={false}
        value={channel}
        onChange={value => value && setChannel(value)}
        error={faults.at('channel') ?? faults.at('address')}
      />
      <TextInput
        label="Where they said so"
        placeholder="intake form, at the desk, by e-mail"
        value={source}
        onChange={event => setSource(event.currentTarget.value)}
        error={faults.at('source')}
      />
      <Textarea
        label="In which words"
        placeholder="Please remind me by e-mail when the topper is due."
        autosize
        minRows={2}
        value={wording}
        onChange={event => setWording(event.currentTarget.value)}
        error={faults.at('wording')}
      />
      <FormFoot faults={faults} busy={saving.busy} label="Save the consent">
        <Button variant="default" onClick={onDone}>
          Not now
        </Button>
      </FormFoot>
    </Form>
  )
}

function WithdrawForm({ consents, onDone }: FormProps) {
  const [channel, setChannel] = useState<Channel | 'all'>('all')
  const [source, setSource] = useState('')
  const [wording, setWording] = useState('')
  const saving = useSaving(trpc.consents.withdraw.mutationOptions())
  const faults = faultsOf(saving.error)
  const { customerId } = consents
  return (
    <Form
      error={saving.error}
      label="They want no more reminders"
      onSave={() => saving.save({ customerId, channel, source, wording }, onDone)}
    >
      <p className={styles.soft}>This holds at once, also for what is written and waits to be sent.</p>
      <Select
        label="No more by"
        data={[{ value: 'all' as const, label: 'any way' }, ...channelChoices]}
        allowDeselect={false}
        value={channel}
        onChange={value => value && setChannel(value)}
        error={faults.at('channel')}
      />
      <TextInput
        label="Where they said so"
        placeholder="by telephone"
        value={source}
        onChange={event => setSource(event.currentTarget.value)}
        error={faults.at('source')}
      />
      <TextInput
        label="In which words"
        placeholder="stop"
        value={wording}
        onChange={event => setWording(event.currentTarget.value)}
        error={faults.at('wording')}
      />
      <FormFoot faults={faults} busy={saving.busy} label="Write to them no more">
        <Button variant="default" onClick={onDone}>
          Not now
        </Button>
      </FormFoot>
    </Form>
  )
}

function Ledger({ consents }: { consents: ConsentsView }) {
  const { zone } = useShop()
  return (
    <details>
      <summary>Everything said about it ({consents.ledger.length})</summary>
      <ul className={styles.list}>
        {consents.ledger.map(line => (
          <li key={line.id}>
            <span className={styles.grow}>
              {longWords(line.at, zone)}:{' '}
              {line.channel === 'all' ? 'everything' : channelWords[line.channel].toLowerCase()} {line.what}
              <small>
                {[line.source, line.wording && `“${line.wording}”`, line.address, `entered by ${line.who}`]
                  .filter(Boolean)
                  .join(' · ')}
              </small>
            </span>
          </li>
        ))}
      </ul>
    </details>
  )
}
