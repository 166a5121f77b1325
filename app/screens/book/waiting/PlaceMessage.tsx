import { Button, CopyButton, Textarea } from '@mantine/core'
import { say } from '../../../../main/domain/language/index.ts'

/** A draft to be read out, or copied into a message. */
export function PlaceMessage({ title, text }: { title: string; text: string }) {
  return (
    <div>
      <Textarea label={title} value={text} readOnly autosize minRows={3} />
      <CopyButton value={text}>
        {({ copied, copy }) => (
          <Button size="compact-sm" variant="default" onClick={copy}>
            {copied ? say('Copied') : say('Copy')}
          </Button>
        )}
      </CopyButton>
    </div>
  )
}
