import { Refusal, refuse } from '../../domain/refusal.ts'

/** What the domain calls an amount in hundredths is to the screens the amount they sent. */
const fieldNames: Readonly<Record<string, string>> = {
  needCenti: 'amount',
  centi: 'amount',
  countedCenti: 'counted',
  'override.lotId': 'lotId',
  'override.why': 'reason',
  why: 'reason',
}

/** Does `work`; what it refuses is named by the field of the caller's input, under `prefix` where there is one. */
export async function asField<T>(prefix: string, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const field = fieldNames[error.field] ?? error.field
    refuse(error.code, { [prefix ? `${prefix}.${field}` : field]: error.value }, error.message)
  }
}
