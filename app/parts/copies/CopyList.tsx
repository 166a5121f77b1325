import { Radio, Stack } from '@mantine/core'
import type { CopiesFound, CopyView } from '../../../main/api/views.ts'
import { decimalNow, say } from '../../../main/domain/language/index.ts'
import { fullWords } from '../time.ts'

interface Props {
  label: string
  found: CopiesFound
  zone: string
  chosen: CopyView | null
  onChoose(copy: CopyView): void
}

/** More are not needed to find the one before a mishap. */
const mostShown = 30

/** Copies to choose one of, newest first, then those that cannot be read; nothing where there are none. */
export function CopyList({ label, found: { copies, unread }, zone, chosen, onChoose }: Props) {
  if (copies.length + unread.length === 0) return null
  const shown = copies.slice(0, mostShown)
  return (
    <Radio.Group
      label={label}
      description={
        copies.length > shown.length
          ? say('The newest {shown} of {copies}', { shown: shown.length, copies: copies.length })
          : undefined
      }
      value={chosen?.path ?? null}
      onChange={path => {
        const copy = shown.find(each => each.path === path)
        if (copy) onChoose(copy)
      }}
    >
      <Stack gap={6} mt="xs" mah={320} style={{ overflowY: 'auto' }}>
        {shown.map(copy => (
          <Radio key={copy.path} value={copy.path} label={copyWords(copy, zone)} />
        ))}
        {unread.slice(0, mostShown).map(({ path, name, words }) => (
          <Radio
            key={path}
            value={path}
            label={say('{name} · cannot be read', { name })}
            description={words}
            disabled
          />
        ))}
      </Stack>
    </Radio.Group>
  )
}

function copyWords({ madeAt, locked, beforeRestore, bytes }: CopyView, zone: string): string {
  const size =
    bytes < 1_000_000
      ? say('{bytes} kB', { bytes: Math.ceil(bytes / 1_000) })
      : say('{bytes} MB', { bytes: decimalNow((bytes / 1_000_000).toFixed(1)) })
  return [
    fullWords(madeAt, zone),
    size,
    ...(locked ? [say('locked')] : []),
    ...(beforeRestore ? [say('what was here before a restore')] : []),
  ].join(' · ')
}
