import { expect, it } from 'vitest'
import { makeDoor } from './makeDoor.ts'

it('a page that goes away without a word stops being told of changes at once', async () => {
  const door = await makeDoor()
  try {
    const { store } = door.desk
    let listening = 0
    const { onCommit } = store
    store.onCommit = listener => {
      const stop = onCommit(listener)
      listening++
      return () => {
        listening--
        stop()
      }
    }
    const leaving = new AbortController()
    const stream = await fetch(`${door.address}/trpc/system.changes`, {
      headers: { ...door.headers, accept: 'text/event-stream' },
      signal: leaving.signal,
    })
    expect(stream.headers.get('content-type')).toContain('text/event-stream')
    expect(stream.headers.get('cache-control')).toBe('no-store')
    await expect.poll(() => listening).toBe(1)
    leaving.abort()
    await expect.poll(() => listening).toBe(0)
  } finally {
    await door.close()
  }
})
