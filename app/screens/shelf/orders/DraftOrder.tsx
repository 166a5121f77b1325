import { ActionIcon, Button, Group } from '@mantine/core'
import { IconX } from '@tabler/icons-react'
import { useState } from 'react'
import type { OrderView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { amountText } from '../../../../main/domain/shelf/index.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { AskDialog } from '../../../parts/AskDialog.tsx'
import { DocumentButton } from '../../../parts/DocumentButton.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import { DecimalInput, MoneyInput } from '../../../parts/inputs.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { Say } from '../../../parts/Say.tsx'
import styles from './Orders.module.css'

interface Props {
  order: OrderView
  /** Leaves the filled button to another act of its screen. */
  quiet?: boolean
  /** The letter is the list's to show: it stays while the order, sent, leaves the drafts. */
  onSend(order: OrderView): void
}

/** An order before it is sent: packs and prices are changed in place, lines dropped, the letter looked at, sent. */
export function DraftOrder({ order, quiet = false, onSend }: Props) {
  const { id, supplierId, supplierName, number, currency } = order
  const form = useForm({
    saved: {
      note: order.note,
      // With all that is shown of it: another window's save gives the order other lines, and these are still looked at.
      lines: order.lines.map(line => ({ ...line, listedMinor: line.packPriceMinor })),
    },
    version: order.version,
    saving: trpc.orders.save.mutationOptions(),
    send: ({ note, lines }, version) => ({
      id,
      version,
      supplierId,
      note,
      // A price nobody touched follows the supplier's list, which may be lower for more packs.
      lines: lines.map(({ id, packs, packPriceMinor, listedMinor }) =>
        packPriceMinor === listedMinor ? { id, packs } : { id, packs, packPriceMinor },
      ),
    }),
  })
  const [dropping, setDropping] = useState(false)
  const cancelling = useSaving(trpc.orders.cancel.mutationOptions())
  const { lines } = form.value
  const fields = form.each<(typeof lines)[number]>('lines').map(({ field, value: line }) => (
    <li key={line.id}>
      <DecimalInput
        aria-label={say('Packs of {productName}', { productName: line.productName })}
        most={10_000}
        whole
        size="xs"
        w={64}
        {...field('packs')}
      />
      <span>
        × {line.containersPerPack > 1 && `${line.containersPerPack} × `}
        {line.sizeLabel} <b>{line.productName}</b>{' '}
        <small>
          {line.article && `${line.article} · `}
          {amountText(line.packs * line.packAmount, line.unit)}
        </small>
      </span>
      <Group gap={6} className={pieces.end} wrap="nowrap">
        <MoneyInput
          aria-label={say('Price of one pack of {productName}', { productName: line.productName })}
          size="xs"
          w={110}
          {...field('packPriceMinor')}
        />
        <span>{lineMoney(line, currency)}</span>
        <ActionIcon
          variant="subtle"
          aria-label={say('Drop {productName}', { productName: line.productName })}
          onClick={() => form.change({ lines: lines.filter(each => each.id !== line.id) })}
        >
          <IconX size="1rem" />
        </ActionIcon>
      </Group>
      {line.why[0] && <small className={styles.why}>{line.why[0]}</small>}
    </li>
  ))
  return (
    <div className={styles.order}>
      <Form form={form} label={say('Order {number} to {supplierName}', { number, supplierName })} save={null}>
        <header>
          <h3>
            <Say
              text="{supplierName} <small>order {number}, draft</small>"
              values={{ supplierName, number }}
            />
          </h3>
          <span>
            {money(order.totalMinor, currency)}
            {order.carriageMinor > 0 && (
              <small>
                {' '}
                {say('with {carriageMinor} carriage', {
                  carriageMinor: money(order.carriageMinor, currency),
                })}
              </small>
            )}
          </span>
          <Group gap={8}>
            {form.dirty && (
              <Button type="submit" variant="default" loading={form.busy}>
                {say('Save')}
              </Button>
            )}
            <DocumentButton path={order.pdfPath} aria-label={say('Order {number} as PDF', { number })}>
              {say('PDF')}
            </DocumentButton>
            <Button
              variant="subtle"
              color="red"
              loading={cancelling.busy}
              aria-label={say('Drop order {number}', { number })}
              onClick={() => setDropping(true)}
            >
              {say('Drop')}
            </Button>
            <Button
              variant={quiet ? 'default' : 'filled'}
              disabled={form.dirty || order.lines.length === 0}
              aria-label={say('Send order {number} to {supplierName}', { number, supplierName })}
              onClick={() => onSend(order)}
            >
              {say('Send')}
            </Button>
          </Group>
        </header>
        <ul>{fields}</ul>
        {order.notes.map(note => (
          <p key={note}>{note}</p>
        ))}
        <Refused of={cancelling.error} />
      </Form>
      {dropping && (
        <AskDialog
          title={say('Drop order {number}?', { number })}
          words={say('It was not sent, and nothing of it comes. What it was for is proposed again.')}
          label={say('Why')}
          action={say('Drop it')}
          busy={cancelling.busy}
          onClose={() => setDropping(false)}
          onSay={reason => {
            cancelling.save({ id, version: order.version, reason })
            setDropping(false)
          }}
        />
      )}
    </div>
  )
}

/** What a line comes to; half-typed packs and prices may be no amount of money yet. */
function lineMoney(line: { packs: number; packPriceMinor: number }, currency: string): string {
  const minor = line.packs * line.packPriceMinor
  return Number.isSafeInteger(minor) ? money(minor, currency) : '–'
}
