import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import {
  askApp,
  awayWords,
  connection,
  onConnection,
  shutOutWords,
  Unanswered,
} from '../../../app/data/connection.ts'

const answers = vi.fn<(address: unknown, init: RequestInit) => Promise<Response>>()
const stored: Record<string, string> = {}

beforeEach(() => {
  vi.useFakeTimers()
  vi.stubGlobal('fetch', answers)
  vi.stubGlobal('localStorage', { getItem: (name: string) => stored[name] ?? null })
})
afterEach(async () => {
  answers.mockResolvedValue(new Response('{}'))
  await askApp('/trpc/system.now')
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

it('puts no answer into words, and asks again until there is one', async () => {
  const heard: string[] = []
  const stop = onConnection(() => heard.push(connection()))
  answers.mockRejectedValue(new TypeError('Failed to fetch'))
  await expect(askApp('/trpc/x')).rejects.toThrow(awayWords)
  expect(connection()).toBe('away')
  await vi.advanceTimersByTimeAsync(6_100)
  expect(answers).toHaveBeenCalledTimes(4)
  expect(answers.mock.lastCall?.[0]).toBe('/trpc/system.now')
  answers.mockResolvedValue(new Response('{}'))
  await vi.advanceTimersByTimeAsync(2_000)
  expect(connection()).toBe('there')
  await vi.advanceTimersByTimeAsync(10_000)
  expect(answers).toHaveBeenCalledTimes(5)
  expect(heard).toEqual(['away', 'there'])
  stop()
})

it('tells an app that does not know this browser from one that is gone', async () => {
  answers.mockResolvedValue(new Response('', { status: 401 }))
  const refused = askApp('/trpc/x')
  await expect(refused).rejects.toThrow(shutOutWords)
  await expect(refused).rejects.toBeInstanceOf(Unanswered)
  expect(connection()).toBe('shut out')
})

it('does not take a call that was given up for an app that is gone', async () => {
  const given = AbortSignal.abort()
  answers.mockRejectedValue(new DOMException('', 'AbortError'))
  await expect(askApp('/trpc/x', { signal: given })).rejects.toThrow(DOMException)
  expect(connection()).toBe('there')
})

it('brings the token of this browser, as it is by then', async () => {
  answers.mockResolvedValue(new Response('{}'))
  await askApp('/trpc/x', { headers: { 'content-type': 'application/json' } })
  expect(answers.mock.lastCall?.[1].headers).toEqual({ 'content-type': 'application/json' })
  stored['lustrum-door'] = JSON.stringify({ token: 'one', links: 'two' })
  await askApp('/trpc/x')
  expect(answers.mock.lastCall?.[1].headers).toEqual({ 'x-lustrum-door': 'one' })
  stored['lustrum-door'] = 'not json'
  await askApp('/trpc/x')
  expect(answers.mock.lastCall?.[1].headers).toEqual({})
})
