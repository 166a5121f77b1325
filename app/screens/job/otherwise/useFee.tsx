import { Checkbox } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import type { JobView } from '../../../../main/api/views.ts'
import { trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'

interface Fee {
  /** Whether it goes on the bill: the shop asks one, and nobody has let it go. */
  fee: boolean
  /** The tick that says so; null where the shop asks none. */
  tick: ReactNode
}

/** A fee the shop's rules name for what went otherwise: offered where there is one, and let go by a tick. */
export function useFee(
  of: 'keptDayMinor' | 'noShowMinor',
  { currency }: Pick<JobView, 'currency'>,
  label: (fee: string) => string,
): Fee {
  const feeMinor = useQuery(trpc.money.rules.queryOptions()).data?.[of] ?? 0
  const [wanted, setWanted] = useState(true)
  return {
    fee: wanted && feeMinor > 0,
    tick: feeMinor > 0 && (
      <Checkbox
        label={label(money(feeMinor, currency))}
        checked={wanted}
        onChange={event => setWanted(event.currentTarget.checked)}
      />
    ),
  }
}
