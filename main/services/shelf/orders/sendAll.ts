import { Refusal } from '../../../domain/refusal.ts'
import type { Desk } from '../../desk/desk.ts'
import type { SendAllInput } from './inputs.ts'
import { proposeDrafts } from './propose.ts'
import { sendOrder } from './send.ts'

/**
 * Sends today's orders by e-mail with their usual letters: these lines, one order a supplier, and the drafts that are
 * there. Each order leaves by itself, because a letter cannot be taken back; one that does not go out stays a draft, and
 * the words say why.
 */
export async function sendAll(
  desk: Desk,
  { lines, drafts }: SendAllInput,
): Promise<{ sent: number; words: string[] }> {
  const written = lines.length > 0 ? await proposeDrafts(desk, { lines }) : []
  const orders = new Map([...drafts, ...written].map(({ id, version }) => [id, version]))
  const words: string[] = []
  let sent = 0
  for (const [id, version] of orders)
    try {
      const view = await sendOrder(desk, { id, version, how: 'email' })
      if (view.sent) sent += 1
      words.push(`${view.sent ? '✓' : '✕'} ${view.words}`)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      words.push(`✕ ${error.message}`)
    }
  return { sent, words }
}
