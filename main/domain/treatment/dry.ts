/** A wet car is dried and blown out before anything that wants it dry. */
import { say } from '../language/index.ts'
import type { Link } from './chainOf.ts'

/**
 * Says where work on paint, a wipe or a layer follows a wash with nothing between that dries: water runs out of seams
 * and mirrors for long, onto pads and under a coat (common practice, no source). At most one line for each wet stretch.
 */
export function wetNotes(chain: readonly Link[]): string[] {
  const notes: string[] = []
  let wetBy: string | null = null
  for (const { template } of chain) {
    const { stage, name, needs } = template
    if (stage === 'dry' || stage === 'rinse') wetBy = null
    else if (stage === 'prepare' || stage === 'finish') wetBy = needs === 'wet' ? name : wetBy
    else if (wetBy !== null) {
      notes.push(
        say(
          '"{name}" wants a dry car, and nothing dries it after "{wetBy}": put a step of the stage "Dry and mask" or "Wash off and dry" between them (common practice).',
          { name, wetBy },
        ),
      )
      wetBy = null
    }
  }
  return notes
}
