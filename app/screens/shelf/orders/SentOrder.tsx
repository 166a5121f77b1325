import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { OrderView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { DateField } from '../../../parts/DateField.tsx'
import { DocumentButton } from '../../../parts/DocumentButton.tsx'
import { Facts } from '../../../parts/Facts.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { Table } from '../../../parts/Table.tsx'
import { dateWords, longWords } from '../../../parts/time.ts'
import { ProductLink } from '../ProductLink.tsx'
import { orderStatusWords } from '../words.ts'
import styles from './Orders.module.css'
import { ReceiveOrder } from './ReceiveOrder.tsx'
import { SendDialog } from './SendDialog.tsx'

interface Props {
  order: OrderView
  onSaid(words: string): void
}

/** An order under way or over: what came of it, what was written about it. */
export function SentOrder({ order, onSaid }: Props) {
  const { zone } = useShop()
  const [chasing, setChasing] = useState(false)
  const { status, sentAt, late, currency, carriageMinor } = order
  const carriage =
    carriageMinor > 0
      ? say(', {carriageMinor} of it carriage', { carriageMinor: money(carriageMinor, currency) })
      : ''
  const open = status === 'sent' || status === 'partly'
  return (
    <>
      <Card
        title={say('Order {number} to {supplierName}', {
          number: order.number,
          supplierName: order.supplierName,
        })}
        about={orderStatusWords[status]}
      >
        <Facts
          of={{
            [say('Sent')]: sentAt !== null && longWords(sentAt, zone),
            [say('Expected')]: order.expectedOn && (
              <span className={late ? pieces.late : undefined}>
                {dateWords(order.expectedOn)}
                {order.lateFromOn &&
                  say(', nine in ten by {lateFromOn}', { lateFromOn: dateWords(order.lateFromOn) })}
                {late && ` ⚑ ${late.words}`}
              </span>
            ),
            [say('Together')]: `${money(order.totalMinor, currency)}${carriage}`,
          }}
        />
        <Group mt="sm">
          <DocumentButton
            path={order.pdfPath}
            aria-label={say('Order {number} as PDF', { number: order.number })}
          >
            {say('PDF')}
          </DocumentButton>
          {open && (
            <Button variant={late ? 'filled' : 'default'} onClick={() => setChasing(true)}>
              {say('Ask after it')}
            </Button>
          )}
        </Group>
        {open && <Promised order={order} />}
      </Card>
      {open ? <ReceiveOrder order={order} onSaid={onSaid} /> : <Lines order={order} />}
      <Messages order={order} />
      {chasing && <SendDialog order={order} kind="chase" onClose={() => setChasing(false)} onSent={onSaid} />}
    </>
  )
}

/** The supplier has named a day: what is reckoned with follows it. */
function Promised({ order }: { order: OrderView }) {
  const form = useForm({
    saved: { promisedOn: order.expectedOn ?? '' },
    version: order.version,
    saving: trpc.orders.promise.mutationOptions(),
    send: (value, version) => ({ ...value, id: order.id, version }),
  })
  return (
    <Form form={form} label={say('The day the supplier names')} save={say('Use this day')}>
      <DateField label={say('The supplier names a day')} w={200} {...form.field('promisedOn')} />
    </Form>
  )
}

function Lines({ order }: { order: OrderView }) {
  return (
    <Card>
      <Table
        rows={order.lines}
        keyOf={line => line.id}
        columns={[
          {
            cell: line => <ProductLink id={line.productId} name={line.productName} />,
            small: line => line.sizeLabel,
          },
          {
            cell: line =>
              say('{receivedContainers} of {orderedContainers} came', {
                receivedContainers: line.receivedContainers,
                orderedContainers: line.orderedContainers,
              }),
          },
          { number: true, cell: line => money(line.lineMinor, order.currency) },
        ]}
      />
    </Card>
  )
}

function Messages({ order }: { order: OrderView }) {
  const { zone } = useShop()
  if (order.messages.length === 0) return null
  return (
    <Card title={say('Letters')}>
      {order.messages.map(message => (
        <details key={message.id}>
          <summary>
            {say('{at} · to {to} · {subject}', {
              at: longWords(message.at, zone),
              to: message.to,
              subject: message.subject,
            })}
            {message.failure && (
              <span className={pieces.late}>
                {' '}
                {say('✕ did not go out: {failure}', { failure: message.failure })}
              </span>
            )}
          </summary>
          <p className={styles.message}>{message.text}</p>
        </details>
      ))}
    </Card>
  )
}
