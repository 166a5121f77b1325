import { notifications } from '@mantine/notifications'
import { useNavigate } from '@tanstack/react-router'
import { say } from '../../../main/domain/language/index.ts'
import { client, faultOf } from '../../data/trpc.ts'
import { handOver } from './takers.ts'
import { useScanner } from './useScanner.ts'

/** Hears scans on every screen. Where the screen does not take them itself, a known code says what it is and leads there. */
export function ScanEars() {
  const navigate = useNavigate()
  const lookUp = async (code: string) => {
    try {
      const found = await client.shelf.scan.query({ code })
      if (found.kind !== 'known' && found.kind !== 'bottle') {
        tell(
          say('Scanned {code}', { code }),
          say('{words} It is taken in at the close of day.', { words: found.words }),
        )
        return
      }
      const to = () =>
        navigate({ to: '/shelf/$section/$id', params: { section: 'product', id: found.productId } })
      tell(
        say('Scanned {code}', { code: found.productName }),
        say('Press here to open its page.'),
        () => void to(),
      )
    } catch (error) {
      tell(say('Scanned {code}', { code }), faultOf(error).message)
    }
  }
  useScanner(code => {
    if (!handOver(code)) void lookUp(code)
  })
  return null
}

// Nothing is opened unasked: whoever is typing an order would lose what is not saved yet.
function tell(title: string, message: string, onClick?: () => void): void {
  notifications.show({
    id: 'scan',
    title,
    message,
    ...(onClick && { onClick, style: { cursor: 'pointer' } }),
  })
}
