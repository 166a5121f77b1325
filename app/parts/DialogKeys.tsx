import { Button, Group } from '@mantine/core'
import { say } from '../../main/domain/language/index.ts'

interface Props {
  /** What the key that writes it down says. */
  act: string
  busy: boolean
  onAct(): void
  onClose(): void
  /** It is where the keyboard begins. */
  autofocus?: boolean
}

/** The two keys of a dialog that asks: the act first, as under every form, and the way back. */
export function DialogKeys({ act, busy, onAct, onClose, autofocus }: Props) {
  return (
    <Group>
      <Button data-autofocus={autofocus} loading={busy} onClick={onAct}>
        {act}
      </Button>
      <Button variant="default" onClick={onClose}>
        {say('Back')}
      </Button>
    </Group>
  )
}
