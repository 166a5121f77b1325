/** What a bay offers, as it is shown; a name the shop gave is shown as it was typed. */
import { sayKept } from '../../../main/domain/language/index.ts'
import { bayFeatures } from '../../../main/domain/shop/index.ts'

export const featureText = (name: string) => sayKept(name)

/** The name as it is kept of what was chosen or typed. */
export const featureOf = (text: string) =>
  bayFeatures.find(feature => featureText(feature).toLowerCase() === text.trim().toLowerCase()) ?? text
