/** What the demo's shop makes and keeps itself: a rinse from a concentrate, pads that are washed, rules for its waste. */
import { dateOfDay } from '../../domain/calendar/index.ts'
import type { Tx } from '../../store/store.ts'

const pads = 'demo-pads'
const rinse = 'demo-rinse'

export async function writeShelfSets(tx: Tx, today: number): Promise<void> {
  await tx.product.create({ data: { id: rinse, name: 'Ambry Rinse', kind: 'wash' } })
  await tx.shelfProduct.create({
    data: { productId: rinse, unit: 'ml', serviceClass: 'handy', place: 'Rack by the wash bay' },
  })
  await tx.dilution.create({
    data: { productId: rinse, concentrateId: 'demo-foam', waterParts: 9, lifeDays: 30 },
  })
  // How often a pad is washed before it is demoted is common practice, no source.
  const grades = [
    { name: 'Finish', washes: 15 },
    { name: 'Correction', washes: 15 },
    { name: 'Wheels', washes: 10 },
  ]
  await tx.reusable.create({ data: { productId: pads, grades } })
  const set = (id: string, name: string, daysAgo: number, washed: object) => ({
    id: `demo-set-${id}`,
    productId: pads,
    name,
    pieces: 6,
    startedOn: dateOfDay(today - daysAgo),
    ...washed,
  })
  await tx.reusableSet.createMany({
    data: [
      set('blue', 'Blue ring', 40, { washes: 9, gradeWashes: 9 }),
      set('red', 'Red ring', 120, { washes: 30, grade: 1, gradeWashes: 15 }),
    ],
  })
  await tx.wasteRule.create({
    data: {
      stream: 'solventCloths',
      rule: 'Red can by the coating bay; the carrier fetches it on the first Monday.',
    },
  })
}
