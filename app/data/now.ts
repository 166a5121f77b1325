import { useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { trpc } from './trpc.ts'

/** The shop's present in epoch minutes, ticking; the server's clock, not this computer's, is what counts. */
export function useNowAt(): number | null {
  const { data, dataUpdatedAt } = useQuery(
    trpc.system.now.queryOptions(undefined, { refetchInterval: 60_000 }),
  )
  const [, tick] = useState(0)
  useEffect(() => {
    const timer = setInterval(() => tick(count => count + 1), 15_000)
    return () => clearInterval(timer)
  }, [])
  if (!data) return null
  return (
    data.nowAt +
    Math.max(0, Math.floor((performance.timeOrigin + performance.now() - dataUpdatedAt) / 60_000))
  )
}
