import { Checkbox, TextInput } from '@mantine/core'
import { useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import type { OrderLineView, OrderView } from '../../../../main/api/views.ts'
import { queryClient, trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput } from '../../../parts/inputs.tsx'
import styles from '../Shelf.module.css'
import { orderStatusWords } from '../words.ts'

interface Props {
  order: OrderView
  onSaid(words: string): void
}

interface Came {
  containers: number
  expiresOn: string
  batch: string
}

const whole = (line: OrderLineView): Came => ({ containers: line.openContainers, expiresOn: '', batch: '' })

/** What came of an order, in whole or in part; each container becomes a bottle with its date and batch. */
export function ReceiveOrder({ order, onSaid }: Props) {
  const open = order.lines.filter(line => line.openContainers > 0)
  const [came, setCame] = useState<Record<string, Came>>({})
  const [complete, setComplete] = useState(false)
  // Told at once: with everything here, the order is over, and this form with it.
  const saving = useMutation(
    trpc.orders.receive.mutationOptions({
      onSuccess: ({ received, order: now }) => {
        setCame({})
        onSaid(`✓ ${[...received.words, `Order ${now.number}: ${orderStatusWords[now.status]}.`].join(' ')}`)
        return queryClient.invalidateQueries()
      },
    }),
  )
  const faults = faultsOf(saving.error)
  const of = (line: OrderLineView) => came[line.id] ?? whole(line)
  const set = (line: OrderLineView, part: Partial<Came>) =>
    setCame(now => ({ ...now, [line.id]: { ...(now[line.id] ?? whole(line)), ...part } }))
  const lines = open
    .map(line => ({ lineId: line.id, ...of(line) }))
    .filter(line => line.containers !== 0)
    .map(line => ({ ...line, expiresOn: line.expiresOn || null, batch: line.batch.trim() || null }))
  const field = (line: OrderLineView) => `lines.${lines.findIndex(each => each.lineId === line.id)}`
  const receive = () => saving.mutate({ id: order.id, version: order.version, lines, complete })
  const rows = open.map(line => (
    <tr key={line.id}>
      <td>
        {line.productName}
        <small>
          {line.sizeLabel} · {line.receivedContainers} of {line.orderedContainers} came before
        </small>
      </td>
      <td>
        <DecimalInput
          aria-label={`Containers of ${line.productName} that came`}
          size="xs"
          w={80}
          value={of(line).containers}
          onChange={containers => set(line, { containers })}
          error={faults.at(`${field(line)}.containers`)}
        />
      </td>
      <td>
        <TextInput
          aria-label={`Printed date of ${line.productName}`}
          type="date"
          size="xs"
          value={of(line).expiresOn}
          onChange={event => set(line, { expiresOn: event.currentTarget.value })}
          error={faults.at(`${field(line)}.expiresOn`)}
        />
      </td>
      <td>
        <TextInput
          aria-label={`Batch of ${line.productName}`}
          size="xs"
          w={130}
          value={of(line).batch}
          onChange={event => set(line, { batch: event.currentTarget.value })}
          error={faults.at(`${field(line)}.batch`)}
        />
      </td>
    </tr>
  ))
  return (
    <div className={styles.card}>
      <h2>
        Receive <small>0 where a line did not come yet</small>
      </h2>
      <Form error={saving.error} label={`Receive order ${order.number}`} onSave={receive}>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Product</th>
              <th scope="col">Came</th>
              <th scope="col">Printed date</th>
              <th scope="col">Batch</th>
            </tr>
          </thead>
          <tbody>{rows}</tbody>
        </table>
        <Checkbox
          label="What is missing will not come any more"
          checked={complete}
          onChange={event => setComplete(event.currentTarget.checked)}
        />
        <FormFoot
          faults={faults}
          busy={saving.isPending}
          label="Put it on the shelf"
          dirty={lines.length > 0 || complete}
        />
      </Form>
    </div>
  )
}
