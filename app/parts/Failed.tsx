import { Button, Group } from '@mantine/core'
import { type ErrorComponentProps, useRouter } from '@tanstack/react-router'
import { useEffect, useRef } from 'react'
import { useConnection } from '../data/connection.ts'
import { faultOf } from '../data/trpc.ts'
import styles from './Failed.module.css'

/**
 * In the place of a screen that could not be shown. Where the app behind the window does not answer it tries again by
 * itself: a restarted app is then simply there.
 */
export function Failed({ error }: ErrorComponentProps) {
  const router = useRouter()
  const away = useConnection() !== 'there'
  const again = () => void router.invalidate()
  const wasAway = useRef(false)
  useEffect(() => {
    if (!away && wasAway.current) void router.invalidate()
    wasAway.current = away
  }, [away, router])
  return (
    <main className={styles.page}>
      <h1>{away ? 'Lustrum does not answer' : 'This screen cannot be shown'}</h1>
      <p role="alert">
        {away
          ? 'The app behind this window was closed, or is just starting. It is asked again every two seconds; what was saved is kept. If it stays away, start Lustrum again.'
          : faultOf(error).message}
      </p>
      <Group>
        <Button onClick={again}>Try again</Button>
        {!away && (
          <Button variant="default" component="a" href="/">
            To the board
          </Button>
        )}
      </Group>
    </main>
  )
}
