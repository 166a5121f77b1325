import { ActionIcon, type ActionIconProps, type ElementProps } from '@mantine/core'
import type { Icon } from '@tabler/icons-react'

interface Props extends ActionIconProps, ElementProps<'button', keyof ActionIconProps> {
  label: string
  icon: Icon
}

/** A button that is only a sign; what it does is read out. */
export function IconAct({ label, icon: Sign, ...rest }: Props) {
  return (
    <ActionIcon variant="subtle" aria-label={label} {...rest}>
      <Sign size="1rem" aria-hidden="true" />
    </ActionIcon>
  )
}
