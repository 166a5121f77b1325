import { notifications } from '@mantine/notifications'
import { createElement, type ReactNode, useEffect, useEffectEvent } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { useSaving } from '../data/saving.ts'
import { faultOf, trpc } from '../data/trpc.ts'
import { isTaken } from './jumpKeys.ts'
import { PutAgain } from './PutAgain.tsx'

/** One notification, whatever is taken back after another. */
const told = 'taken-back'

/** Takes back an act, or the last of this desk, says which it was or why it stands, and offers the way back. */
export function useTakeBack() {
  const saving = useSaving(trpc.history.takeBack.mutationOptions(), {
    onSaved: ({ words, actId }) =>
      tell(
        say('Taken back'),
        createElement(PutAgain, { words, ...(actId !== null && { onPut: () => put.save({ actId }) }) }),
      ),
    onRefused: error => tell(say('Not taken back'), faultOf(error).message),
  })
  const put = useSaving(trpc.history.takeBack.mutationOptions(), {
    onSaved: ({ words }) => tell(say('Redone'), words),
    onRefused: error => tell(say('Not redone'), faultOf(error).message),
  })
  return { takeBack: saving.save, busy: saving.busy || put.busy }
}

function tell(title: string, message: ReactNode): void {
  notifications.hide(told)
  notifications.show({ id: told, title, message, autoClose: 12_000 })
}

/** Ctrl Z anywhere but in text, where it takes back what was typed. */
export function useTakeBackKey(): void {
  const { takeBack } = useTakeBack()
  const press = useEffectEvent((event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return
    if (event.key.toLowerCase() !== 'z' || isTaken(event.target)) return
    event.preventDefault()
    takeBack({})
  })
  useEffect(() => {
    const listener = (event: KeyboardEvent) => press(event)
    window.addEventListener('keydown', listener)
    return () => window.removeEventListener('keydown', listener)
  }, [])
}
