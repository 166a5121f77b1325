import { Alert } from '@mantine/core'
import { faultsOf } from '../faults.ts'

interface Props {
  words?: string | null | undefined
  /** The refusal itself, where no field shows it. */
  of?: unknown
}

/** What was refused, in its words; nothing where nothing was. */
export function Refused({ of, words = faultsOf(of).rest() }: Props) {
  return words ? (
    <Alert color="red" variant="outline" role="alert" style={{ whiteSpace: 'pre-line' }}>
      {words}
    </Alert>
  ) : null
}
