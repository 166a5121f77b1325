import { say } from '../../main/domain/language/index.ts'
/**
 * What stands in the way of other devices that should open an address of this app, in words; null: nothing known. What
 * the shop prints or copies out of this window is of no use on a telephone where the app answers its own computer only.
 */
export function reachWords(link: string): string | null {
  const { protocol, hostname } = new URL(link)
  if (!protocol.startsWith('http'))
    return say(
      'This window has an address that no other program opens. Start Lustrum in the browser (npm start -- --host web) and copy the address from there.',
    )
  if (hostname === 'localhost' || hostname === '[::1]' || /^127\.\d+\.\d+\.\d+$/.test(hostname))
    return say('This address works on this computer only: a telephone or another computer does not reach it.')
  return null
}
