import type { SMTPServerOptions } from 'smtp-server'
import type { OrderView } from '../../../../main/api/views.ts'
import { saveMailSettings } from '../../../../main/services/desk/mailSettings.ts'
import { proposeDrafts } from '../../../../main/services/shelf/orders/propose.ts'
import { startMailServer, type TestMailServer } from '../../../outbox/mailServer.ts'
import { makeDesk, type TestDesk } from '../../makeDesk.ts'
import { type ShelfShop, shelfShop } from '../shelfShop.ts'

export interface OrderDesk {
  desk: TestDesk
  shop: ShelfShop
  mail: TestMailServer
  /** A draft of so many bottles of the coating. */
  draft(packs?: number): Promise<OrderView>
  close(): Promise<void>
}

/** A shop that can send its orders, on a Wednesday, 08:00 in New York; `options` make its mail server stubborn. */
export async function orderDesk(options: SMTPServerOptions = {}): Promise<OrderDesk> {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  const shop = await shelfShop(desk)
  const mail = await startMailServer(options)
  await saveMailSettings(desk, {
    host: '127.0.0.1',
    port: mail.port,
    security: 'none',
    user: null,
    fromName: 'Ashdown Paint Care',
    fromAddress: 'hello@ashdown.example.com',
  })
  const lines = (packs: number) => [{ offerId: shop.offers.coating, packs, why: ['Because.'] }]
  return {
    desk,
    shop,
    mail,
    draft: async (packs = 3) => (await proposeDrafts(desk, { lines: lines(packs) }))[0]!,
    close: async () => {
      await mail.close()
      await desk.close()
    },
  }
}
