import { Button, Group, TextInput } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { OrderView } from '../../../../main/api/views.ts'
import { documentHref } from '../../../data/door.ts'
import { useForm } from '../../../data/form.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import { money } from '../../../parts/money.ts'
import { dateWords, longWords } from '../../../parts/time.ts'
import styles from '../Shelf.module.css'
import { orderStatusWords } from '../words.ts'
import orderStyles from './Orders.module.css'
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
  const open = order.status === 'sent' || order.status === 'partly'
  return (
    <>
      <div className={styles.card}>
        <h2>
          Order {order.number} to {order.supplierName} <small>{orderStatusWords[order.status]}</small>
        </h2>
        <dl>
          {order.sentAt !== null && (
            <>
              <dt>Sent</dt>
              <dd>{longWords(order.sentAt, zone)}</dd>
            </>
          )}
          {order.expectedOn && (
            <>
              <dt>Expected</dt>
              <dd className={order.late ? styles.late : undefined}>
                {dateWords(order.expectedOn)}
                {order.lateFromOn && `, nine in ten by ${dateWords(order.lateFromOn)}`}
                {order.late && ` ⚑ ${order.late.words}`}
              </dd>
            </>
          )}
          <dt>Together</dt>
          <dd>
            {money(order.totalMinor, order.currency)}
            {order.carriageMinor > 0 && `, ${money(order.carriageMinor, order.currency)} of it carriage`}
          </dd>
        </dl>
        <Group mt="sm">
          <Button
            component="a"
            variant="default"
            href={documentHref(order.pdfPath)}
            target="_blank"
            rel="noreferrer"
            aria-label={`Order ${order.number} as PDF`}
          >
            PDF
          </Button>
          {open && (
            <Button variant={order.late ? 'filled' : 'default'} onClick={() => setChasing(true)}>
              Ask after it
            </Button>
          )}
        </Group>
        {open && <Promised order={order} />}
      </div>
      {open ? <ReceiveOrder order={order} onSaid={onSaid} /> : <Lines order={order} />}
      <Messages order={order} />
      {chasing && (
        <SendDialog
          order={order}
          kind="chase"
          onClose={() => setChasing(false)}
          onSent={words => {
            setChasing(false)
            onSaid(words)
          }}
        />
      )}
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
    <Form form={form} label="The day the supplier names" save="Reckon with it">
      <TextInput type="date" label="The supplier names a day" w={200} {...form.field('promisedOn')} />
    </Form>
  )
}

function Lines({ order }: { order: OrderView }) {
  return (
    <div className={styles.card}>
      <table className={styles.table}>
        <tbody>
          {order.lines.map(line => (
            <tr key={line.id}>
              <td>
                <Link to="/shelf/$section/$id" params={{ section: 'product', id: line.productId }}>
                  {line.productName}
                </Link>
                <small>{line.sizeLabel}</small>
              </td>
              <td>
                {line.receivedContainers} of {line.orderedContainers} came
              </td>
              <td className={styles.number}>{money(line.lineMinor, order.currency)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Messages({ order }: { order: OrderView }) {
  const { zone } = useShop()
  if (order.messages.length === 0) return null
  return (
    <div className={styles.card}>
      <h2>Letters</h2>
      {order.messages.map(message => (
        <details key={message.id}>
          <summary>
            {longWords(message.at, zone)} · to {message.to} · {message.subject}
            {message.failure && <span className={styles.late}> ✕ did not go out: {message.failure}</span>}
          </summary>
          <p className={orderStyles.message}>{message.text}</p>
        </details>
      ))}
    </div>
  )
}
