/** The shop as it stands in the head of its papers. */
import type { Issuer } from '../../documents/kit/frame.ts'
import { type Paper, paperOf } from '../../documents/kit/pdf.ts'
import { readLogo } from '../../domain/shop/index.ts'
import { showPhone } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import { type ShopView, shopOf } from './shopView.ts'

/** How the papers look, as it was saved or from the start. */
export async function paperStyleOf(tx: Tx) {
  const saved = await tx.paperStyle.findUnique({ where: { id: 1 }, include: { logo: true } })
  return saved ?? { paper: null, colour: '#31456b', version: 0, logo: null }
}

/** What every paper of the shop needs: who issues it, and on which paper. */
export async function letterheadOf(tx: Tx): Promise<{ issuer: Issuer; paper: Paper }> {
  const [shop, style] = await Promise.all([shopOf(tx), paperStyleOf(tx)])
  return { issuer: issuerIn(shop, style), paper: (style.paper as Paper | null) ?? paperOf(shop.country) }
}

function issuerIn(shop: ShopView, { logo, colour }: Awaited<ReturnType<typeof paperStyleOf>>): Issuer {
  const phone = shop.phone === null ? null : showPhone(shop.phone, shop.country)
  return {
    name: shop.name,
    lines: [...(shop.address ?? '').split(/\r?\n/), phone ?? '', shop.email ?? ''],
    logo: logo && { bytes: logo.bytes, ...sizeOf(logo.bytes) },
    colour,
  }
}

function sizeOf(bytes: Uint8Array): { width: number; height: number } {
  const { width, height } = readLogo(bytes)
  return { width, height }
}
