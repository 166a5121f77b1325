import { Group, Text } from '@mantine/core'
import { IconPlus, IconX } from '@tabler/icons-react'
import type { WallSpan } from '../../main/domain/calendar/index.ts'
import { say } from '../../main/domain/language/index.ts'
import { IconAct } from './IconAct.tsx'
import { WallInput } from './inputs.tsx'

interface Props {
  /** What is open, for the labels: "Monday". */
  name: string
  spans: WallSpan[]
  onChange(index: number, span: WallSpan): void
  onAdd(span: WallSpan): void
  onRemove(index: number): void
  errorAt(index: number, end: 'from' | 'to'): string | undefined
}

/** The openings of one day, each from and to, with a way to add a second after a break. */
export function WallSpans({ name, spans, onChange, onAdd, onRemove, errorAt }: Props) {
  const last = spans.at(-1)
  const next =
    last && last.to < 1440 ? { from: Math.min(last.to + 60, 1410), to: Math.min(last.to + 300, 1440) } : null
  return (
    <Group gap="md" align="flex-start">
      {spans.map((span, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an opening has no other name than its place
        <Group key={i} gap={6} wrap="nowrap" align="flex-start">
          <WallInput
            aria-label={
              i > 0 ? say('{name} opens, opening {i}', { name, i: i + 1 }) : say('{name} opens', { name })
            }
            value={span.from}
            onChange={from => onChange(i, { ...span, from })}
            error={errorAt(i, 'from')}
            w={96}
          />
          <Text pt={6} aria-hidden="true">
            {say('to')}
          </Text>
          <WallInput
            aria-label={
              i > 0 ? say('{name} closes, opening {i}', { name, i: i + 1 }) : say('{name} closes', { name })
            }
            value={span.to}
            onChange={to => onChange(i, { ...span, to })}
            error={errorAt(i, 'to')}
            w={96}
          />
          {i > 0 && (
            <IconAct
              label={say('Take out opening {i} of {name}', { i: i + 1, name })}
              icon={IconX}
              mt={4}
              onClick={() => onRemove(i)}
            />
          )}
        </Group>
      ))}
      {next && spans.length < 3 && (
        <IconAct
          label={say('Another opening on {name}', { name })}
          title={say('Another opening, after a break')}
          icon={IconPlus}
          mt={4}
          onClick={() => onAdd(next)}
        />
      )}
    </Group>
  )
}
