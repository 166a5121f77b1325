import { Button, Group } from '@mantine/core'
import { say } from '../../main/domain/language/index.ts'

interface Props {
  /** What the arrows are called: "Earlier", "Later". */
  labels: readonly [back: string, on: string]
  /** By one step back or on; 0 is today. */
  onTurn(by: -1 | 0 | 1): void
}

/** Turns the days of a screen. */
export function TurnDays({ labels, onTurn }: Props) {
  return (
    <Group gap={4}>
      <Button variant="default" onClick={() => onTurn(-1)} aria-label={labels[0]}>
        ←
      </Button>
      <Button variant="default" onClick={() => onTurn(0)}>
        {say('Today')}
      </Button>
      <Button variant="default" onClick={() => onTurn(1)} aria-label={labels[1]}>
        →
      </Button>
    </Group>
  )
}
