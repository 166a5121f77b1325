import { useQuery } from '@tanstack/react-query'
import type { CloseOfDayView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { useNowAt } from '../../data/now.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'

/** The shelf as today's close would show it; undefined while it is looked up. */
export function useShelfToday(): CloseOfDayView | undefined {
  const { zone } = useShop()
  const nowAt = useNowAt()
  const date = nowAt === null ? '' : dateOf(nowAt, zone)
  return useQuery({ ...trpc.shelf.closeOfDay.queryOptions({ date }), enabled: date !== '' }).data
}
