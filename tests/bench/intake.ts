/** What comes in: lists from elsewhere. */
import { importFigures } from './intake/imports.ts'
import type { Figure } from './run.ts'

export async function* run(): AsyncGenerator<Figure> {
  yield* importFigures()
}
