import { Button, type ButtonProps } from '@mantine/core'
import { documentHref } from '../data/door.ts'

interface Props extends ButtonProps {
  path: string
  'aria-label'?: string
}

/** Opens a document of the app beside the window. */
export function DocumentButton({ path, ...rest }: Props) {
  return (
    <Button
      component="a"
      variant="default"
      href={documentHref(path)}
      target="_blank"
      rel="noreferrer"
      {...rest}
    />
  )
}
