import type { ShelfProduct } from '../../../main/domain/shelf/product.ts'

export const veilTen: ShelfProduct = {
  id: 'p',
  name: 'Veil Ten',
  kind: 'coating',
  unit: 'ml',
  densityGPerMl: 0.92,
  lifeAfterOpeningDays: 90,
  storage: { leastC: 5, mostC: 25 },
}
