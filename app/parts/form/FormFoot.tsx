import { Alert, Button, Group } from '@mantine/core'
import type { ReactNode } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import type { FormState } from '../../data/form.ts'
import styles from './FormFoot.module.css'
import { Refused } from './Refused.tsx'

interface Props {
  form: FormState
  label?: string | null | undefined
  ready?: boolean | undefined
  quiet?: boolean | undefined
  onCancel?: (() => void) | undefined
  children?: ReactNode
}

/** The end of a form: what was refused and belongs to no field, the button that saves and the one that does not. */
export function FormFoot(props: Props) {
  const { form, label = say('Save'), ready = props.form.ready, quiet = false, onCancel, children } = props
  const { faults, outdated, busy, reload } = form
  const words = faults.rest()
  const late = outdated || faults.stale
  if (label === null && !late && !words) return null
  return (
    <div className={styles.foot}>
      {outdated && !faults.stale && (
        <Alert color="orange" variant="outline" title={say('Changed in another window')} role="status">
          {say('Saving this would be refused. Look at what is there now, then make your change again.')}
        </Alert>
      )}
      <Refused words={words} />
      <Group>
        {label !== null && (
          <Button type="submit" variant={quiet ? 'default' : 'filled'} loading={busy} disabled={!ready}>
            {label}
          </Button>
        )}
        {late && (
          <Button variant="default" onClick={reload}>
            {say('Show what is there now')}
          </Button>
        )}
        {onCancel && (
          <Button variant="default" onClick={onCancel}>
            {say('Cancel')}
          </Button>
        )}
        {children}
      </Group>
    </div>
  )
}
