import { Button, Group } from '@mantine/core'
import { say } from '../../main/domain/language/index.ts'

/** What was taken back, and the way to have it stand again. */
export function PutAgain({ words, onPut }: { words: string; onPut?: () => void }) {
  return (
    <Group justify="space-between" wrap="nowrap">
      <span>{words}</span>
      {onPut && (
        <Button size="compact-sm" variant="default" onClick={onPut}>
          {say('Redo')}
        </Button>
      )}
    </Group>
  )
}
