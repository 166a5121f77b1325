import { Button, Group, PasswordInput, Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { MailView } from '../../../../main/api/views.ts'
import { useDraft } from '../../../data/draft.ts'
import { useSaving } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput } from '../../../parts/inputs.tsx'
import styles from '../Shelf.module.css'

const securityChoices = [
  { value: 'tls', label: 'Encrypted from the start (TLS)' },
  { value: 'starttls', label: 'Encrypted after greeting (STARTTLS)' },
  { value: 'none', label: 'Not encrypted' },
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
  const draft = useDraft(saved, version)
  const [password, setPassword] = useState('')
  const saving = useSaving(trpc.mail.save.mutationOptions())
  const faults = faultsOf(saving.error)
  const { value, change } = draft
  const save = () =>
    saving.save({ ...value, ...(password ? { password } : {}), ...(mail ? { version } : {}) }, () => {
      draft.settle()
      setPassword('')
    })
  return (
    <div className={styles.card}>
      <h2>Mail</h2>
      <Form error={saving.error} label="How mail leaves the shop" onSave={save}>
        <p className={styles.soft}>
          Your e-mail provider names these. Without them an order is saved as a PDF, to be sent by hand.
        </p>
        <div className={styles.fields}>
          <TextInput
            label="Mail server"
            placeholder="mail.example.com"
            value={value.host}
            onChange={event => change({ host: event.currentTarget.value })}
            error={faults.at('host')}
          />
          <DecimalInput
            label="Port"
            value={value.port}
            onChange={port => change({ port })}
            error={faults.at('port')}
          />
          <Select
            label="Encryption"
            data={securityChoices}
            allowDeselect={false}
            value={value.security}
            onChange={security => security && change({ security: security as MailView['security'] })}
            error={faults.at('security')}
          />
          <TextInput
            label="User"
            value={value.user ?? ''}
            onChange={event => change({ user: event.currentTarget.value || null })}
            error={faults.at('user')}
          />
          <PasswordInput
            label="Password"
            placeholder={hasPassword ? 'kept; type to change it' : ''}
            autoComplete="off"
            value={password}
            onChange={event => setPassword(event.currentTarget.value)}
            error={faults.at('password')}
            visibilityToggleButtonProps={{ 'aria-label': 'Show the password' }}
          />
          <TextInput
            label="Letters come from, name"
            value={value.fromName}
            onChange={event => change({ fromName: event.currentTarget.value })}
            error={faults.at('fromName')}
          />
          <TextInput
            label="Letters come from, address"
            type="email"
            value={value.fromAddress}
            onChange={event => change({ fromAddress: event.currentTarget.value })}
            error={faults.at('fromAddress')}
          />
        </div>
        <FormFoot
          faults={faults}
          busy={saving.busy}
          label="Save the mail settings"
          dirty={draft.dirty || password !== ''}
          outdated={draft.outdated}
          onReload={() => {
            saving.reset()
            draft.reload()
          }}
        />
      </Form>
      {mail && <TryMail />}
    </div>
  )
}

function TryMail() {
  const [to, setTo] = useState('')
  const trying = useSaving(trpc.mail.test.mutationOptions())
  const [said, setSaid] = useState<{ sent: boolean; words: string } | null>(null)
  return (
    <Form
      error={trying.error}
      label="Try the mail settings"
      onSave={() => {
        setSaid(null)
        trying.save({ to }, setSaid)
      }}
    >
      <Group align="flex-start" mt="md">
        <TextInput
          label="Send a letter to try it"
          type="email"
          w={280}
          value={to}
          onChange={event => setTo(event.currentTarget.value)}
          error={trying.error ? faultOf(trying.error).message : undefined}
        />
        <Button type="submit" variant="default" mt={25} loading={trying.busy} disabled={!to.trim()}>
          Try it
        </Button>
      </Group>
      <p role="status" className={said?.sent === false ? styles.late : styles.said}>
        {said && `${said.sent ? '✓' : '✕'} ${said.words}`}
      </p>
    </Form>
  )
}
