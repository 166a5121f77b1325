/** What an intake must hold before anybody signs it. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/** Kept in place of a signature where whoever signs confirmed with their typed name, as without a hand for a pen. */
export const typedSignature = 'typed'

/** As far as it is asked about: a signature says that these were looked at together. */
export interface SignedIntake {
  readonly odometer: number | null
  readonly keys: number | null
  readonly damageAgreed: boolean
  readonly ownerName: string
  /** The path of an SVG picture, or `typedSignature`. */
  readonly signature: string
}

/**
 * Refuses an intake that would settle no dispute: without the odometer, the keys, the damage agreed on, the owner’s name
 * or their signature. A signature that is a mere dot was a slip of the finger.
 * @throws Refusal naming the field.
 */
export function checkIntake({ odometer, keys, damageAgreed, ownerName, signature }: SignedIntake): void {
  if (odometer === null)
    refuse(
      'incomplete',
      { 'draft.odometer': odometer },
      say('Note the odometer: it says later how far the car went meanwhile.'),
    )
  if (keys === null)
    refuse('incomplete', { 'draft.keys': keys }, say('Count the keys that were handed over; 0 is an answer.'))
  if (!damageAgreed)
    refuse(
      'incomplete',
      { 'draft.damageAgreed': damageAgreed },
      say('Go over the damage with the owner, then tick that it is agreed.'),
    )
  if (ownerName.trim() === '') refuse('name-missing', { ownerName }, say('Write the name of whoever signs.'))
  if (signature !== typedSignature && (signature.match(/[ML]/g) ?? []).length < 4)
    refuse(
      'signature-missing',
      { signature: null },
      say('The owner signs in the box, or confirms with the typed name.'),
    )
}
