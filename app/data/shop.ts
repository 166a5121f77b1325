import { useQuery } from '@tanstack/react-query'
import type { ShopView } from '../../main/api/views.ts'
import { standIn } from '../../main/domain/language/index.ts'
import { queryClient, trpc } from './trpc.ts'

// Asked at each figure, so a country or a clock changed in the settings holds at once.
standIn(() => queryClient.getQueryData(trpc.shop.get.queryKey()) ?? undefined)

/** The shop. Only for screens inside the frame: the router lets nobody there before there is one. */
export function useShop(): ShopView {
  const shop = useQuery(trpc.shop.get.queryOptions()).data
  if (!shop) throw new Error('A screen that needs the shop was shown before there was one.')
  return shop
}
