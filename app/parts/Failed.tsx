import { Button, Group } from '@mantine/core'
import { type ErrorComponentProps, useRouter } from '@tanstack/react-router'
import { useEffect, useRef } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { type Connection, useConnection } from '../data/connection.ts'
import { faultOf } from '../data/trpc.ts'
import styles from './Failed.module.css'

const words: Record<Exclude<Connection, 'there'>, { title: string; told: string }> = {
  away: {
    title: say('Lustrum does not answer'),
    told: say(
      'The app behind this window was closed, or is just starting. It is asked again every two seconds; what was saved is kept. If it stays away, start Lustrum again.',
    ),
  },
  'shut out': {
    title: say('This browser has not been let in'),
    told: say('Start Lustrum once more: it opens a new tab, and this one goes on by itself.'),
  },
}

/**
 * In the place of a screen that could not be shown. Where the app behind the window does not answer it tries again by
 * itself: a restarted app is then simply there.
 */
export function Failed({ error }: ErrorComponentProps) {
  const router = useRouter()
  const connection = useConnection()
  const away = connection === 'there' ? null : words[connection]
  const again = () => void router.invalidate()
  const wasAway = useRef(false)
  useEffect(() => {
    if (!away && wasAway.current) void router.invalidate()
    wasAway.current = away !== null
  }, [away, router])
  return (
    <main className={styles.page}>
      <h1>{away?.title ?? say('This screen cannot be shown')}</h1>
      <p role="alert">{away?.told ?? faultOf(error).message}</p>
      <Group>
        <Button onClick={again}>{say('Try again')}</Button>
        {!away && (
          <Button variant="default" component="a" href="/">
            {say('To the board')}
          </Button>
        )}
      </Group>
    </main>
  )
}
