import type { CureProfile, Figure, FigureSource } from '../../../../main/domain/cure/index.ts'
import type { Fields } from '../../../data/fields.ts'

/** What each group of a cure profile's figures is given. */
export interface FigureProps {
  profile: CureProfile
  put(part: Partial<CureProfile>): void
  at(field: string): string | undefined
  fields: Fields<CureProfile>
  sourced(figure: Figure): { source: FigureSource; onSource(source: FigureSource): void }
}
