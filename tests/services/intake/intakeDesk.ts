import type { IntakeDraft } from '../../../main/services/intake/inputs.ts'
import { getIntake } from '../../../main/services/intake/intake.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

/** Four strokes and more: a name, not a slip of the finger. */
export const signature = 'M10 90L40 30L70 120L100 60M120 80L160 82L190 40'

export interface IntakeDesk {
  desk: TestDesk
  shop: TestShop
  jobId: string
}

/** A shop with a car booked for today; `treatments` as the test shop names them. */
export async function intakeDesk(
  treatments: (keyof TestShop['treatments'])[] = ['correction'],
): Promise<IntakeDesk> {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  const shop = await testShop(desk)
  const { id } = await bookJob(desk, shop, { treatments, vehicle: 0, kind: 'soonest' })
  return { desk, shop, jobId: id }
}

/** The intake’s draft as it may be signed, with `part` in it. */
export async function filledIntake(
  { desk, jobId }: IntakeDesk,
  part: Partial<IntakeDraft> = {},
): Promise<IntakeDraft> {
  const { draft } = await getIntake(desk, { jobId })
  return { ...draft, odometer: 41_210, keys: 2, fuelEighths: 4, damageAgreed: true, ...part }
}
