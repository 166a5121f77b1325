import { Alert, Button, Group } from '@mantine/core'
import { Component, type ReactNode } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { faultOf } from '../data/trpc.ts'

interface Props {
  /** Drawn again once this is another one. */
  drawnFor: unknown
  /** A way back to what could be drawn, where there is one. */
  back?: (() => void) | undefined
  children: ReactNode
}

/** Around one panel: where it cannot be drawn, the rest of the screen stays, and with it everything typed there. */
export class Boundary extends Component<Props, { error: unknown }> {
  override state = { error: null as unknown }

  static getDerivedStateFromError(error: unknown) {
    return { error }
  }

  override componentDidUpdate(before: Props) {
    if (this.state.error !== null && before.drawnFor !== this.props.drawnFor) this.setState({ error: null })
  }

  override render() {
    const { back, children } = this.props
    if (this.state.error === null) return children
    return (
      <Alert color="red" variant="outline" role="alert" title={say('This part cannot be shown')}>
        <p>{faultOf(this.state.error).message}</p>
        <Group>
          <Button variant="default" onClick={() => (back ? back() : this.setState({ error: null }))}>
            {back ? say('Undo the last typing') : say('Try again')}
          </Button>
        </Group>
      </Alert>
    )
  }
}
