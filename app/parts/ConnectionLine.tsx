import { notifyManager, useQueryClient } from '@tanstack/react-query'
import { type ReactNode, useSyncExternalStore } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { useConnection } from '../data/connection.ts'
import { faultOf } from '../data/trpc.ts'
import styles from './ConnectionLine.module.css'

/** Why something this screen shows could not be read, where it has nothing from before to show instead. */
function useUnread(): string | null {
  const cache = useQueryClient().getQueryCache()
  return useSyncExternalStore(
    // Not within the drawing of whichever part asked.
    changed => cache.subscribe(notifyManager.batchCalls(changed)),
    () => {
      const failed = cache
        .findAll({ type: 'active' })
        .find(
          ({ state }) =>
            state.status === 'error' && state.data === undefined && faultOf(state.error).reason === null,
        )
      return failed ? faultOf(failed.state.error).message : null
    },
  )
}

/**
 * The screen, under a quiet line while the app behind it does not answer. What could not be read at all is not shown as
 * if it were empty: the screen is put aside, with all that was typed, until it could.
 */
export function ConnectionLine({ children }: { children: ReactNode }) {
  const connection = useConnection()
  const unread = useUnread()
  const aside = connection !== 'there' && unread !== null
  return (
    <>
      <div role="status">
        {connection === 'away' && (
          <p className={styles.line}>
            {say(
              'The app is not answering; it is asked again every two seconds, and this goes on by itself.',
            )}
          </p>
        )}
        {connection === 'shut out' && (
          <p className={styles.line}>
            {say(
              'The app does not know this browser. Start Lustrum once more: it opens a new tab, and this one goes on.',
            )}
          </p>
        )}
        {unread !== null && (
          <p className={styles.line}>
            {aside
              ? say('This screen could not be read yet. What you typed is kept.')
              : say('Part of this screen could not be read: {unread}', { unread })}
          </p>
        )}
      </div>
      <div hidden={aside}>{children}</div>
    </>
  )
}
