import { openSpans } from '../domain/calendar/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { checkTreatment, type Treatment, type TreatmentProduct } from '../domain/shop/index.ts'
import type { Tx } from '../store/store.ts'
import { shopOf } from './shopView.ts'

/** Refuses a treatment that the shop, with its hours and the products in use, could not carry out. */
export async function checkSold(tx: Tx, treatment: Treatment): Promise<void> {
  const products = await tx.product.findMany({ where: { archivedAt: null } })
  checkTreatment(treatment, products as unknown as TreatmentProduct[], await longestOpening(tx))
}

/** Refuses what has just been written to a product where a treatment that uses it can then not be carried out. */
export async function checkUsers(tx: Tx, productId: string, field: string): Promise<void> {
  const users = await tx.treatment.findMany({
    where: { archivedAt: null, steps: { some: { productId } } },
    include: { steps: { orderBy: { position: 'asc' } } },
  })
  for (const treatment of users)
    try {
      await checkSold(tx, treatment as unknown as Treatment)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      const words = `The treatment "${treatment.name}" could not be carried out any more. ${error.message}`
      throw new Refusal(error.code, field, error.value, words)
    }
}

/** The longest unbroken opening of an ordinary fortnight, in minutes. */
async function longestOpening(tx: Tx): Promise<number> {
  const { weekly } = await shopOf(tx)
  const spans = openSpans({ zone: 'UTC', weekly, exceptions: [] }, 0, 14 * 1440)
  return Math.max(0, ...spans.map(span => span.to - span.from))
}
