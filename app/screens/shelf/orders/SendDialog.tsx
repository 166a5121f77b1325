import { Alert, Button, Group, Modal, Stack, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { DraftMessageView, OrderView, SentView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'

interface Props {
  order: OrderView
  kind: DraftMessageView['kind']
  onClose(): void
  onSent(words: string): void
}

/** The letter with an order, or one that asks after it: read, changed, sent. */
export function SendDialog({ order, kind, onClose, onSent }: Props) {
  const query = useQuery({ ...trpc.orders.message.queryOptions({ id: order.id, kind }), staleTime: 0 })
  const title =
    kind === 'order'
      ? `Send order ${order.number} to ${order.supplierName}`
      : `Ask ${order.supplierName} after order ${order.number}`
  return (
    <Modal opened onClose={onClose} title={title} size="lg" closeButtonProps={{ 'aria-label': 'Close' }}>
      {query.error && <Alert color="red">{faultOf(query.error).message}</Alert>}
      {query.data && <Letter message={query.data} order={order} onClose={onClose} onSent={onSent} />}
    </Modal>
  )
}

interface LetterProps extends Omit<Props, 'kind'> {
  message: DraftMessageView
}

function Letter({ message, order, onClose, onSent }: LetterProps) {
  const [to, setTo] = useState(message.to ?? '')
  const [subject, setSubject] = useState(message.subject)
  const [text, setText] = useState(message.text)
  const sending = useSaving(trpc.orders.send.mutationOptions())
  const chasing = useSaving(trpc.orders.chase.mutationOptions())
  const error = sending.error ?? chasing.error
  const faults = faultsOf(error)
  const { orderId: id, version, kind } = message
  const letter = { to, subject, text }
  const done = ({ sent, words }: SentView) => onSent(`${sent ? '✓' : '✕'} ${words}`)
  const send = () =>
    kind === 'order'
      ? sending.save({ id, version, how: 'email', ...letter }, done)
      : chasing.save({ id, version, ...letter }, done)
  return (
    <Form error={error} label="The letter" onSave={send}>
      <Stack gap="sm">
        {message.cannot && (
          <Alert color="orange" variant="outline">
            {message.cannot}{' '}
            <Link to="/shelf/$section" params={{ section: message.to ? 'rules' : 'suppliers' }}>
              {message.to ? 'Rules and mail' : 'Suppliers'}
            </Link>
          </Alert>
        )}
        <TextInput
          label="To"
          type="email"
          data-autofocus={!message.to || undefined}
          value={to}
          onChange={event => setTo(event.currentTarget.value)}
          error={faults.at('to')}
        />
        <TextInput
          label="Subject"
          value={subject}
          onChange={event => setSubject(event.currentTarget.value)}
          error={faults.at('subject')}
        />
        <Textarea
          label="Letter"
          autosize
          minRows={5}
          maxRows={14}
          value={text}
          onChange={event => setText(event.currentTarget.value)}
          error={faults.at('text')}
        />
        <FormFoot
          faults={faults}
          busy={sending.busy || chasing.busy}
          label={kind === 'order' ? 'Send it with the PDF' : 'Send it'}
        >
          <Group gap="sm">
            <Button component="a" variant="default" href={order.pdfPath} target="_blank" rel="noreferrer">
              Look at the PDF
            </Button>
            {kind === 'order' && (
              <Button variant="default" onClick={() => sending.save({ id, version, how: 'paper' }, done)}>
                It was given over another way
              </Button>
            )}
            <Button variant="default" onClick={onClose}>
              Not now
            </Button>
          </Group>
        </FormFoot>
      </Stack>
    </Form>
  )
}
