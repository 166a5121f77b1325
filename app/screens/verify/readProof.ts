/** What a certificate's file says of itself: its code, and the statement it prints. */
export interface Proof {
  code: string | null
  statement: string | null
}

/** More than any certificate; a longer file is read so far and no farther. */
const mostBytes = 10 * 1024 * 1024

/** Reads the PDF (its keywords) or the page (its two fields); null for what is not in it. */
export async function readProof(file: Blob): Promise<Proof> {
  const bytes = new Uint8Array(await file.slice(0, mostBytes).arrayBuffer())
  const text = new TextDecoder('latin1').decode(bytes)
  const code = /LUSTRUM1\.\d{1,9}-\d{1,4}\.[\w-]{43}\.[\w-]{86}\.[\w-]{8}/.exec(text)?.[0] ?? null
  const packed = /STATEMENT\.([\w-]+)/.exec(text)?.[1]
  if (packed) return { code, statement: new TextDecoder().decode(bytesOf(packed)) }
  if (!/<textarea id="statement"/.test(text)) return { code, statement: null }
  const page = new DOMParser().parseFromString(new TextDecoder().decode(bytes), 'text/html')
  return { code, statement: page.querySelector('#statement')?.textContent ?? null }
}

function bytesOf(base64url: string): Uint8Array<ArrayBuffer> {
  const letters = atob(base64url.replaceAll('-', '+').replaceAll('_', '/'))
  return Uint8Array.from(letters, letter => letter.charCodeAt(0))
}
