import { Button, Group, Select, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { Channel, ConsentsView } from '../../../main/api/views.ts'
import { say, withinSentence } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullWords } from '../../parts/time.ts'
import { channelChoices, channelWords } from '../upkeep/words.ts'
import styles from './Customers.module.css'
import { ReachForm } from './ReachForm.tsx'

const asks = [
  ['give', say('Record consent')],
  ['withdraw', say('Opt out')],
  ['reach', say('Language and postal address')],
] as const

/** What this owner agrees to be reached by, and everything ever said about it. */
export function Consents({ customerId }: { customerId: string }) {
  const consents = useQuery(trpc.consents.list.queryOptions({ customerId })).data
  const [form, setForm] = useState<(typeof asks)[number][0] | null>(null)
  if (!consents) return null
  const close = () => setForm(null)
  return (
    <Card title={say('May be reminded by')}>
      <ul className={pieces.list}>
        {consents.states.map(({ channel, address, state, words }) => (
          <li key={channel}>
            <span className={styles.way}>
              {state?.given ? '✓' : '–'} {channelWords[channel]}
            </span>
            <span className={pieces.grow}>
              {words}
              {address !== null && <small>{address}</small>}
            </span>
          </li>
        ))}
      </ul>
      {form === null && (
        <Group mt="sm" mb="sm" gap="sm">
          {asks.map(([which, label]) => (
            <Button key={which} variant="default" onClick={() => setForm(which)}>
              {label}
            </Button>
          ))}
        </Group>
      )}
      {form === 'give' && <GiveForm consents={consents} onDone={close} />}
      {form === 'withdraw' && <WithdrawForm consents={consents} onDone={close} />}
      {form === 'reach' && <ReachForm consents={consents} onDone={close} />}
      {consents.ledger.length > 0 && <Ledger consents={consents} />}
    </Card>
  )
}

interface FormProps {
  consents: ConsentsView
  onDone(): void
}

function GiveForm({ consents, onDone }: FormProps) {
  const first = consents.states.find(each => each.address !== null && !each.state?.given)
  const { customerId } = consents
  const form = useForm({
    saved: { channel: first?.channel ?? ('email' as Channel), source: '', wording: '' },
    saving: trpc.consents.give.mutationOptions(),
    send: value => ({ ...value, customerId }),
    done: onDone,
  })
  const { faults } = form
  return (
    <Form
      form={form}
      label={say('They agree to be reminded')}
      save={say('Save the consent')}
      onCancel={onDone}
    >
      <p className={pieces.soft}>
        {say(
          'Write down what they said and where: whether it is enough is for local law, which this program does not know.',
        )}
      </p>
      <Select
        label={say('By')}
        data={channelChoices}
        {...form.choice('channel')}
        error={faults.at('channel') ?? faults.at('address')}
      />
      <TextInput
        label={say('Where they said so')}
        placeholder={say('intake form, at the desk, by e-mail')}
        {...form.field('source')}
      />
      <Textarea
        label={say('In which words')}
        placeholder={say('Please remind me by e-mail when the topper is due.')}
        autosize
        minRows={2}
        {...form.field('wording')}
      />
    </Form>
  )
}

function WithdrawForm({ consents, onDone }: FormProps) {
  const { customerId } = consents
  const form = useForm({
    saved: { channel: 'all' as Channel | 'all', source: '', wording: '' },
    saving: trpc.consents.withdraw.mutationOptions(),
    send: value => ({ ...value, customerId }),
    done: onDone,
  })
  return (
    <Form
      form={form}
      label={say('They want no more reminders')}
      save={say('Write to them no more')}
      onCancel={onDone}
    >
      <p className={pieces.soft}>
        {say('This holds at once, also for what is written and waits to be sent.')}
      </p>
      <Select
        label={say('No more by')}
        data={[{ value: 'all' as const, label: say('any way') }, ...channelChoices]}
        {...form.choice('channel')}
      />
      <TextInput
        label={say('Where they said so')}
        placeholder={say('by telephone')}
        {...form.field('source')}
      />
      <TextInput label={say('In which words')} placeholder={say('stop')} {...form.field('wording')} />
    </Form>
  )
}

function Ledger({ consents }: { consents: ConsentsView }) {
  const { zone } = useShop()
  return (
    <details>
      <summary>{say('Everything said about it ({ledger})', { ledger: consents.ledger.length })}</summary>
      <ul className={pieces.list}>
        {consents.ledger.map(line => (
          <li key={line.id}>
            <span className={pieces.grow}>
              {fullWords(line.at, zone)}:{' '}
              {line.channel === 'all' ? say('everything') : withinSentence(channelWords[line.channel])}{' '}
              {line.what === 'given' ? say('given||consent') : say('withdrawn||consent')}
              <small>
                {[
                  line.source,
                  line.wording && say('“{wording}”', { wording: line.wording }),
                  line.address,
                  say('entered by {who}', { who: line.who }),
                ]
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
