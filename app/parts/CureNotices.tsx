import { notifications } from '@mantine/notifications'
import { useNavigate } from '@tanstack/react-router'
import { useEffect } from 'react'
import type { NoticeView } from '../../main/api/views.ts'
import { say } from '../../main/domain/language/index.ts'
import { client } from '../data/trpc.ts'

/** How often the desk asks; the server answers each notice once. */
const everyMs = 30_000

/** Tells what held cars may have done, once: by the computer's own notifications where they are allowed, else here. */
export function CureNotices() {
  const navigate = useNavigate()
  useEffect(() => {
    let asking = false
    const open = (notice: NoticeView) => void navigate({ to: '/jobs/$id', params: { id: notice.jobId } })
    const ask = async () => {
      if (asking) return
      asking = true
      // Where the server cannot be reached nothing is marked as told: it is asked again.
      const notices = await client.cure.takeNotices.mutate().catch(() => [])
      for (const notice of notices) tell(notice, () => open(notice))
      asking = false
    }
    void ask()
    const timer = setInterval(ask, everyMs)
    // A computer that wakes, or a window that comes back, asks at once.
    const shown = () => document.visibilityState === 'visible' && void ask()
    document.addEventListener('visibilitychange', shown)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', shown)
    }
  }, [navigate])
  return null
}

function tell({ jobId, kind, title, words }: NoticeView, open: () => void): void {
  const id = `${jobId} ${kind}`
  // In the window too: a desktop notification is gone when it is missed.
  notifications.show({
    id,
    title,
    message: words,
    autoClose: false,
    onClick: open,
    closeButtonProps: { 'aria-label': say('Close') },
  })
  if (typeof Notification === 'undefined' || Notification.permission !== 'granted') return
  const notice = new Notification(title, { body: words, tag: id })
  notice.onclick = () => {
    window.focus()
    open()
  }
}
