import { useState } from 'react'
import type { ScanView } from '../../../main/api/views.ts'
import { client, faultOf } from '../../data/trpc.ts'
import { useScans } from '../../parts/scans/takers.ts'
import type { Counting } from './ShelfRow.tsx'

/** What a code that was not simply found leads to. */
export type ScanAnswer = ScanView | { kind: 'failed'; code: string; words: string }

/** Takes codes from the scanner or from hand: a known one goes straight to counting that bottle. */
export function useScan(count: (counting: Counting) => void) {
  const [answer, setAnswer] = useState<ScanAnswer | null>(null)
  const [busy, setBusy] = useState(false)
  const take = async (code: string) => {
    setBusy(true)
    try {
      const found = await client.shelf.scan.query({ code })
      setAnswer(found)
      if (found.kind === 'bottle') count({ productId: found.productId, lotId: found.lot.id })
      if (found.kind === 'known') {
        const next = found.lots.find(lot => lot.next && lot.sizeId === found.sizeId) ?? found.lots[0]
        count({ productId: found.productId, lotId: next?.id ?? null })
      }
    } catch (error) {
      setAnswer({ kind: 'failed', code, words: faultOf(error).message })
    } finally {
      setBusy(false)
    }
  }
  useScans(code => void take(code))
  return { answer, busy, take, clear: () => setAnswer(null) }
}
