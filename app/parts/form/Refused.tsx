import { Alert } from '@mantine/core'

/** What was refused, in its words; nothing where nothing was. */
export function Refused({ words }: { words: string | null | undefined }) {
  return words ? (
    <Alert color="red" variant="outline" role="alert" style={{ whiteSpace: 'pre-line' }}>
      {words}
    </Alert>
  ) : null
}
