import { PasswordInput, Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { MailView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import styles from '../Shelf.module.css'

const securityChoices = [
  { value: 'tls', label: say('TLS from the start') },
  { value: 'starttls', label: say('STARTTLS') },
  { value: 'none', label: say('Not encrypted') },
]

const fresh = {
  host: '',
  port: 587,
  security: 'starttls' as MailView['security'],
  user: null as string | null,
  fromName: '',
  fromAddress: '',
}

/** The server that takes the shop's letters, and a letter to try it. The password goes in and never comes back. */
export function MailForm({ mail }: { mail: MailView | null }) {
  const { version = 0, hasPassword = false, ...saved } = mail ?? (fresh as typeof fresh & Partial<MailView>)
  const form = useForm({
    saved: { ...saved, password: '' },
    version,
    saving: trpc.mail.save.mutationOptions(),
    send: ({ password, ...value }, version) => ({
      ...value,
      ...(password && { password }),
      ...(mail && { version }),
    }),
  })
  return (
    <Card title={say('Mail')}>
      <Form form={form} label={say('Outgoing mail')} save={say('Save the mail settings')}>
        <p className={pieces.soft}>
          {say(
            'Your e-mail provider names these. Without them an order is saved as a PDF, to be sent by hand.',
          )}
        </p>
        <div className={pieces.fields}>
          <TextInput
            label={say('Mail server')}
            placeholder={say('mail.example.com')}
            {...form.field('host')}
          />
          <DecimalInput label={say('Port')} least={1} most={65_535} whole {...form.field('port')} />
          <Select label={say('Encryption')} data={securityChoices} {...form.choice('security')} />
          <TextInput label={say('User')} {...form.optional('user')} />
          <PasswordInput
            label={say('Password')}
            placeholder={hasPassword ? say('kept; type to change it') : ''}
            autoComplete="off"
            {...form.field('password')}
            visibilityToggleButtonProps={{ 'aria-label': say('Show the password') }}
          />
          <TextInput label={say('Sender’s name')} {...form.field('fromName')} />
          <TextInput label={say('Sender’s address')} type="email" {...form.field('fromAddress')} />
        </div>
      </Form>
      {mail && <TryMail />}
    </Card>
  )
}

function TryMail() {
  const [said, setSaid] = useState<{ sent: boolean; words: string } | null>(null)
  const form = useForm({
    saved: { to: '' },
    saving: trpc.mail.test.mutationOptions(),
    send: value => {
      setSaid(null)
      return value
    },
    done: setSaid,
  })
  return (
    <Form form={form} label={say('Try the mail settings')} save={say('Try it')} ready={form.dirty}>
      <TextInput label={say('Send a test e-mail to')} type="email" w={280} mt="md" {...form.field('to')} />
      <p role="status" className={said?.sent === false ? pieces.late : styles.said}>
        {said && `${said.sent ? '✓' : '✕'} ${said.words}`}
      </p>
    </Form>
  )
}
