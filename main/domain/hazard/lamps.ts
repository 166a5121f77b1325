/** Cautions of curing a coat with lamps or heat. Common practice, no source: the data sheet and the lamp's maker decide. */
import { say } from '../language/index.ts'
import { degreesWords, type UnitSystem } from '../measure/degreesWords.ts'

/** Panel temperatures heat is kept under, by what lies beneath, °C. Common practice, no source. */
export const panelCeilingsC = { metal: 80, plastic: 60, film: 50 } as const

/** What to say to whoever sets up a lamp, in the order it is done. */
export function lampCautions(units: UnitSystem): string[] {
  const most = (celsius: number) => degreesWords(celsius, units)
  const { metal, plastic, film } = panelCeilingsC
  return [
    say(
      'Let the solvent flash off first, as long as the data sheet says, and the vapour clear: a lamp is a source of ignition.',
    ),
    say(
      'Measure the panel, not the air, and keep under the sheet’s ceiling; where it names none, {metal} on painted metal, {plastic} on plastic, {film} on film (common practice, no source).',
      { metal: most(metal), plastic: most(plastic), film: most(film) },
    ),
    say(
      'Do not look into the lamp; wear the glasses its maker names, against ultraviolet light as well as heat. Panels and the lamp’s head burn the skin. Nobody leaves it alone, and nothing that burns stands in its beam.',
    ),
    say('The data sheet, the lamp’s instructions, local codes and licensed practice decide.'),
  ]
}
