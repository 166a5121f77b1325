import { Checkbox, TextInput } from '@mantine/core'
import type { OrderLineView, OrderView } from '../../../../main/api/views.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
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

/** What is sent: the lines of which something came. */
const linesOf = (open: OrderLineView[], came: Record<string, Came>) =>
  open
    .map(line => ({ lineId: line.id, ...(came[line.id] ?? whole(line)) }))
    .filter(line => line.containers !== 0)
    .map(line => ({ ...line, expiresOn: line.expiresOn || null, batch: line.batch.trim() || null }))

/** What came of an order, in whole or in part; each container becomes a bottle with its date and batch. */
export function ReceiveOrder({ order, onSaid }: Props) {
  const open = order.lines.filter(line => line.openContainers > 0)
  const form = useForm({
    saved: { came: {} as Record<string, Came>, complete: false },
    version: order.version,
    saving: trpc.orders.receive.mutationOptions(),
    send: ({ came, complete }, version) => ({ id: order.id, version, lines: linesOf(open, came), complete }),
    done: ({ received, order: now }) =>
      onSaid(`✓ ${[...received.words, `Order ${now.number}: ${orderStatusWords[now.status]}.`].join(' ')}`),
  })
  const { faults, change } = form
  const { came, complete } = form.value
  const of = (line: OrderLineView) => came[line.id] ?? whole(line)
  const lines = linesOf(open, came)
  const set = (line: OrderLineView, part: Partial<Came>) =>
    change({ came: { ...came, [line.id]: { ...of(line), ...part } } })
  const field = (line: OrderLineView) => `lines.${lines.findIndex(each => each.lineId === line.id)}`
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
          most={10_000}
          whole
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
      <Form
        form={form}
        label={`Receive order ${order.number}`}
        save="Put it on the shelf"
        ready={lines.length > 0 || complete}
      >
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
        <Checkbox label="What is missing will not come any more" {...form.tick('complete')} />
      </Form>
    </div>
  )
}
