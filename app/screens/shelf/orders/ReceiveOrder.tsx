import { Checkbox, TextInput } from '@mantine/core'
import type { OrderLineView, OrderView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { OptionalDateField } from '../../../parts/DateField.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'
import { Table } from '../../../parts/Table.tsx'
import { orderStatusWords } from '../words.ts'

interface Props {
  order: OrderView
  onSaid(words: string): void
}

interface Came {
  containers: number
  expiresOn: string | null
  batch: string
}

const whole = (line: OrderLineView): Came => ({ containers: line.openContainers, expiresOn: null, batch: '' })

/** What is sent: the lines of which something came. */
const linesOf = (open: OrderLineView[], came: Record<string, Came>) =>
  open
    .map(line => ({ lineId: line.id, ...(came[line.id] ?? whole(line)) }))
    .filter(line => line.containers !== 0)
    .map(line => ({ ...line, batch: line.batch.trim() || null }))

/** What came of an order, in whole or in part; each container becomes a bottle with its date and batch. */
export function ReceiveOrder({ order, onSaid }: Props) {
  const open = order.lines.filter(line => line.openContainers > 0)
  const form = useForm({
    saved: { came: {} as Record<string, Came>, complete: false },
    version: order.version,
    saving: trpc.orders.receive.mutationOptions(),
    send: ({ came, complete }, version) => ({ id: order.id, version, lines: linesOf(open, came), complete }),
    done: ({ received, order: now }) =>
      onSaid(
        `✓ ${[...received.words, say('Order {number}: {orderStatusWords}.', { number: now.number, orderStatusWords: orderStatusWords[now.status] })].join(' ')}`,
      ),
  })
  const { faults, change } = form
  const { came, complete } = form.value
  const of = (line: OrderLineView) => came[line.id] ?? whole(line)
  const lines = linesOf(open, came)
  const field = <K extends keyof Came>(line: OrderLineView, name: K) => ({
    size: 'xs',
    value: of(line)[name],
    onChange: (typed: Came[K]) => change({ came: { ...came, [line.id]: { ...of(line), [name]: typed } } }),
    error: faults.at(`lines.${lines.findIndex(each => each.lineId === line.id)}.${name}`),
  })
  return (
    <Card title={say('Receive')} about={say('0 where a line did not come yet')}>
      <Form
        form={form}
        label={say('Receive order {number}', { number: order.number })}
        save={say('Put it on the shelf')}
        ready={lines.length > 0 || complete}
      >
        <Table
          rows={open}
          keyOf={line => line.id}
          columns={[
            {
              head: say('Product'),
              cell: line => line.productName,
              small: line =>
                say('{sizeLabel} · {receivedContainers} of {orderedContainers} came before', {
                  sizeLabel: line.sizeLabel,
                  receivedContainers: line.receivedContainers,
                  orderedContainers: line.orderedContainers,
                }),
            },
            {
              head: say('Came'),
              cell: line => (
                <DecimalInput
                  aria-label={say('Containers of {productName} that came', { productName: line.productName })}
                  most={10_000}
                  whole
                  w={80}
                  {...field(line, 'containers')}
                />
              ),
            },
            {
              head: say('Printed date'),
              cell: line => (
                <OptionalDateField
                  aria-label={say('Printed date of {productName}', { productName: line.productName })}
                  w={150}
                  {...field(line, 'expiresOn')}
                />
              ),
            },
            {
              head: say('Batch'),
              cell: line => (
                <TextInput
                  aria-label={say('Batch of {productName}', { productName: line.productName })}
                  w={130}
                  {...field(line, 'batch')}
                  onChange={event => field(line, 'batch').onChange(event.currentTarget.value)}
                />
              ),
            },
          ]}
        />
        <Checkbox label={say('What is missing will not come any more')} {...form.tick('complete')} />
      </Form>
    </Card>
  )
}
