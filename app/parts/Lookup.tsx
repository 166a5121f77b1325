import { Button, Group } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { faultOf } from '../data/trpc.ts'
import pieces from './pieces.module.css'

interface Props {
  error: unknown
  /** What is looked up: "the job". */
  what: string
  /** Where to go where there is no such thing. */
  to: string
  label: string
}

/** In the place of a thing that is being looked up; says so where it is not there, and keeps saying so while it is asked for again. */
export function Lookup({ error, what, to, label }: Props) {
  const [last, setLast] = useState(error)
  if (error && error !== last) setLast(error)
  const words = error ?? last
  if (!words) return <p style={{ color: 'var(--soft)' }}>{say('Looking up {what} …', { what })}</p>
  return (
    <div className={pieces.empty}>
      <p role="alert">{faultOf(words).message}</p>
      <Group>
        <Button component={Link} to={to} variant="default">
          {label}
        </Button>
      </Group>
    </div>
  )
}
