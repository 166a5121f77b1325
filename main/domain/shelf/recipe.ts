/** What a step draws of a product for one vehicle size: an amount with the spread it usually has. */
export interface RecipeAmount {
  readonly centi: number
  readonly sdCenti: number
}
