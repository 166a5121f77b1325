import { Button, type ButtonProps, type ElementProps } from '@mantine/core'
import { say } from '../../main/domain/language/index.ts'

interface Props extends ButtonProps, ElementProps<'button', keyof ButtonProps> {
  /** What it says. */
  does: string
  /** The row it does it to, for those who do not see where it stands. */
  of?: string
}

/** A small button that stands once in each row of a list. */
export function RowButton({ does, of, ...rest }: Props) {
  return (
    <Button variant="default" size="compact-sm" aria-label={of && say('{does} {of}', { does, of })} {...rest}>
      {does}
    </Button>
  )
}
