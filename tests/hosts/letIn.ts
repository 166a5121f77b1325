import type { ShopServer } from '../e2e/server.ts'

/** Asks a running server as a window that was let in does. */
export async function letIn(server: ShopServer) {
  const entered = await fetch(server.entrance)
  const cookie = (entered.headers.get('set-cookie') ?? '').split(';')[0]!
  const token = /data-token="([^"]+)"/.exec(await entered.text())?.[1] ?? ''
  const headers = { cookie, 'x-lustrum-door': token, 'content-type': 'application/json' }
  const answered = async (asked: Promise<Response>) => {
    const answer = await asked
    const said = await answer.json()
    if (!answer.ok) throw new Error(`${answer.url} was answered ${answer.status}: ${JSON.stringify(said)}`)
    return said.result.data
  }
  const urlOf = (name: string) => `${server.address}/trpc/${name}`
  return {
    query: (name: string, input: object) =>
      answered(fetch(`${urlOf(name)}?input=${encodeURIComponent(JSON.stringify(input))}`, { headers })),
    mutate: (name: string, input: object) =>
      answered(fetch(urlOf(name), { method: 'POST', headers, body: JSON.stringify(input) })),
  }
}
