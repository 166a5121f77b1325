import { Button, Group } from '@mantine/core'
import { useInterval } from '@mantine/hooks'
import { type ErrorComponentProps, useRouter } from '@tanstack/react-router'
import { TRPCClientError } from '@trpc/client'
import { faultOf } from '../data/trpc.ts'
import styles from './Failed.module.css'

const againAfterMs = 5000

/**
 * In the place of a screen that could not be shown. Where the app behind the window does not answer it tries again by
 * itself: a restarted app is then simply there.
 */
export function Failed({ error }: ErrorComponentProps) {
  const router = useRouter()
  const away = error instanceof TRPCClientError && !error.data
  const again = () => void router.invalidate()
  useInterval(() => away && again(), againAfterMs, { autoInvoke: true })
  return (
    <main className={styles.page}>
      <h1>{away ? 'Lustrum does not answer' : 'This screen cannot be shown'}</h1>
      <p role="alert">
        {away
          ? 'The app behind this window was closed, or is just starting. It is asked again every five seconds; what was saved is kept. If it stays away, start it again and open the address it prints.'
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
