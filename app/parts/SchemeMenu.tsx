import { ActionIcon, Menu, useMantineColorScheme } from '@mantine/core'
import { IconDeviceDesktop, IconMoon, IconSun } from '@tabler/icons-react'
import { say } from '../../main/domain/language/index.ts'
import type { Scheme } from './commands.ts'

const choices = [
  { scheme: 'light', label: say('Light'), Icon: IconSun },
  { scheme: 'dark', label: say('Dark'), Icon: IconMoon },
  { scheme: 'auto', label: say('Same as the computer'), Icon: IconDeviceDesktop },
] as const satisfies readonly { scheme: Scheme; label: string; Icon: unknown }[]

/** Light, dark, or whichever the computer has. */
export function SchemeMenu() {
  const { colorScheme, setColorScheme } = useMantineColorScheme()
  const now = choices.find(({ scheme }) => scheme === colorScheme) ?? choices[2]
  return (
    <Menu position="bottom-end">
      <Menu.Target>
        <ActionIcon variant="subtle" size="lg" aria-label={say('Colours: {label}', { label: now.label })}>
          <now.Icon size="1.2rem" aria-hidden="true" />
        </ActionIcon>
      </Menu.Target>
      <Menu.Dropdown>
        {choices.map(({ scheme, label, Icon }) => (
          <Menu.Item
            key={scheme}
            leftSection={<Icon size="1rem" aria-hidden="true" />}
            rightSection={scheme === now.scheme ? '✓' : undefined}
            onClick={() => setColorScheme(scheme)}
          >
            {label}
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  )
}
