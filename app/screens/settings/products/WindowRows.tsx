import { Button, Group, NativeSelect } from '@mantine/core'
import { type WindowName, type WindowRow, windowNames } from '../../../../main/domain/cure/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { DurationInput, OptionalDurationInput } from '../../../parts/inputs.tsx'
import type { FigureProps } from './figureProps.ts'
import { TemperatureInput } from './TemperatureInput.tsx'

const words: Record<WindowName, string> = { recoat: say('next layer'), topper: say('topper') }

/** What the sheet gives for a window at other temperatures, a row for each stretch of them. */
export function WindowRows({ profile, put, at }: FigureProps) {
  const { windowRows, referenceC } = profile
  const named = windowNames.filter(name => profile[name])
  const change = (index: number, part: Partial<WindowRow>) =>
    put({ windowRows: windowRows.map((row, i) => (i === index ? { ...row, ...part } : row)) })
  const add = (window: WindowName) => {
    const { minMin = 0, maxMin = null } = profile[window] ?? {}
    put({
      windowRows: [...windowRows, { window, fromC: referenceC - 10, toC: referenceC - 5, minMin, maxMin }],
    })
  }
  return (
    <div>
      {windowRows.map((row, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row has no other name than its place
        <Group key={i} gap={6} mb={6} align="flex-start">
          <NativeSelect
            aria-label={say('Row {i}, window', { i: i + 1 })}
            data={windowNames.map(name => ({ value: name, label: words[name] }))}
            value={row.window}
            onChange={event => change(i, { window: event.currentTarget.value as WindowName })}
            error={at(`windowRows.${i}.window`)}
          />
          <TemperatureInput
            aria-label={say('Row {i}, from temperature', { i: i + 1 })}
            value={row.fromC}
            onChange={fromC => change(i, { fromC })}
            error={at(`windowRows.${i}.fromC`)}
          />
          <TemperatureInput
            aria-label={say('Row {i}, to temperature', { i: i + 1 })}
            value={row.toC}
            onChange={toC => change(i, { toC })}
            error={at(`windowRows.${i}.toC`)}
          />
          <DurationInput
            aria-label={say('Row {i}, opens after', { i: i + 1 })}
            w={90}
            value={row.minMin}
            onChange={minMin => change(i, { minMin })}
            error={at(`windowRows.${i}.minMin`)}
          />
          <OptionalDurationInput
            aria-label={say('Row {i}, closes after', { i: i + 1 })}
            w={90}
            value={row.maxMin}
            onChange={maxMin => change(i, { maxMin })}
            error={at(`windowRows.${i}.maxMin`)}
          />
          <Button
            variant="subtle"
            size="compact-sm"
            mt={6}
            onClick={() => put({ windowRows: windowRows.filter((_, k) => k !== i) })}
          >
            {say('Take out')}
          </Button>
        </Group>
      ))}
      {named[0] && (
        <Button variant="default" size="compact-sm" onClick={() => add(named[0]!)}>
          {say('Add a temperature')}
        </Button>
      )}
    </div>
  )
}
