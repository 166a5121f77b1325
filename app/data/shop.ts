import { useQuery } from '@tanstack/react-query'
import type { ShopView } from '../../main/api/views.ts'
import { standIn, type Ways } from '../../main/domain/language/index.ts'
import { queryClient, trpc } from './trpc.ts'

let beingSetUp: Ways | undefined

// Asked at each figure, so a country or a clock changed in the settings holds at once.
standIn(() => queryClient.getQueryData(trpc.shop.get.queryKey()) ?? beingSetUp)

/** Has times and weeks written as in the shop that is being set up, from this drawing on and until it is there. */
export function writeAsIn({ country, units }: Pick<ShopView, 'country' | 'units'>): void {
  beingSetUp = { country, units }
}

/** The shop. Only for screens inside the frame: the router lets nobody there before there is one. */
export function useShop(): ShopView {
  const shop = useQuery(trpc.shop.get.queryOptions()).data
  if (!shop) throw new Error('A screen that needs the shop was shown before there was one.')
  return shop
}
