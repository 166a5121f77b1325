import { Alert, Button, Stack, Textarea, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { DraftMessageView, OrderView, SentView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { type SavingOptions, useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { DocumentButton } from '../../../parts/DocumentButton.tsx'
import { Dialog } from '../../../parts/form/Dialog.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'

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
      ? say('Send order {number} to {supplierName}', {
          number: order.number,
          supplierName: order.supplierName,
        })
      : say('Ask {supplierName} after order {number}', {
          supplierName: order.supplierName,
          number: order.number,
        })
  return (
    <Dialog onClose={onClose} title={title} size="lg">
      <Refused of={query.error} />
      {query.data && <Letter message={query.data} order={order} onClose={onClose} onSent={onSent} />}
    </Dialog>
  )
}

interface LetterProps extends Omit<Props, 'kind'> {
  message: DraftMessageView
}

function Letter({ message, order, onClose, onSent }: LetterProps) {
  const { orderId: id, kind } = message
  const done = ({ sent, words }: SentView) => {
    onClose()
    onSent(`${sent ? '✓' : '✕'} ${words}`)
  }
  const ways = { order: trpc.orders.send.mutationOptions(), chase: trpc.orders.chase.mutationOptions() }
  const form = useForm({
    saved: { to: message.to ?? '', subject: message.subject, text: message.text },
    version: message.version,
    saving: ways[kind] as SavingOptions<object, SentView>,
    send: (letter, version) => ({ ...letter, id, version, ...(kind === 'order' && { how: 'email' }) }),
    done,
  })
  const givenOver = useSaving(trpc.orders.send.mutationOptions())
  return (
    <Form
      form={form}
      label={say('The letter')}
      save={kind === 'order' ? say('Send it with the PDF') : say('Send it')}
      ready
      onCancel={onClose}
      more={
        <>
          <DocumentButton path={order.pdfPath}>{say('Look at the PDF')}</DocumentButton>
          {kind === 'order' && (
            <Button
              variant="default"
              onClick={() => givenOver.save({ id, version: form.version, how: 'paper' }, done)}
            >
              {say('It was given over another way')}
            </Button>
          )}
        </>
      }
    >
      <Stack gap="sm">
        <Refused of={givenOver.error} />
        {message.cannot && (
          <Alert color="orange" variant="outline">
            {message.cannot}{' '}
            <Link to="/shelf/$section" params={{ section: message.to ? 'rules' : 'suppliers' }}>
              {message.to ? say('Rules and mail') : say('Suppliers')}
            </Link>
          </Alert>
        )}
        <TextInput
          label={say('To')}
          type="email"
          data-autofocus={!message.to || undefined}
          {...form.field('to')}
        />
        <TextInput label={say('Subject')} {...form.field('subject')} />
        <Textarea label={say('Letter')} autosize minRows={5} maxRows={14} {...form.field('text')} />
      </Stack>
    </Form>
  )
}
