import type { Issuer } from '../../documents/kit/frame.ts'
import { showPhone } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import type { ShopView } from './shopView.ts'

/** The shop as it stands in the head of its papers. */
export async function issuerOf(_tx: Tx, shop: ShopView): Promise<Issuer> {
  const phone = shop.phone === null ? null : showPhone(shop.phone, shop.country)
  return {
    name: shop.name,
    lines: [...(shop.address ?? '').split(/\r?\n/), phone ?? '', shop.email ?? ''],
    logo: null,
    colour: '#31456b',
  }
}
