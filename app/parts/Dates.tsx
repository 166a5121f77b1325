import { DatesProvider, type DayOfWeek } from '@mantine/dates'
import { useQuery } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { languageNow, weekBeginsNow } from '../../main/domain/language/index.ts'
import { trpc } from '../data/trpc.ts'

/** Has every calendar begin its weeks as the shop does. */
export function Dates({ children }: { children: ReactNode }) {
  // Asked for to be told of a change; before there is a shop, weeks begin as the language has them.
  useQuery(trpc.shop.get.queryOptions())
  const firstDayOfWeek = (weekBeginsNow() % 7) as DayOfWeek
  return <DatesProvider settings={{ locale: languageNow(), firstDayOfWeek }}>{children}</DatesProvider>
}
