/** A page of its own, without network and without this app, that says whether a certificate is as it was signed. */
import { languageNow, say } from '../domain/language/index.ts'
import { signedText } from '../domain/proof/index.ts'

export interface VerifyPage {
  shopName: string
  reference: string
  /** What the certificate states, a fact a line. */
  statement: string
  code: string
  key: { id: string; publicKey: string }
}

/** What the page does when asked; `signedForm` is the text that was signed, with its two places left open. */
const checking = String.raw`
const bytesOf = text => Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), c => c.charCodeAt(0))
const textOf = bytes => btoa(String.fromCharCode(...new Uint8Array(bytes))).replace(/\+/g, '-').replace(/\//g, '_').replace(/=/g, '')
const plain = text => text.split(/\r?\n/).map(line => line.normalize('NFC').replace(/\s+/g, ' ').trim()).filter(Boolean).map(line => line + '\n').join('')
async function check(statement, code) {
  const parts = /^LUSTRUM1\.(\d{1,9}-\d{1,4})\.([\w-]{43})\.([\w-]{86})\.([\w-]{8})$/.exec(code.replace(/\s+/g, ''))
  if (!parts) return said.noCode
  const [, reference, digest, signature, key] = parts
  if (key !== keyId) return said.otherKey
  let right
  try {
    const imported = await crypto.subtle.importKey('raw', bytesOf(publicKey), 'Ed25519', false, ['verify'])
    const signed = signedForm.replace('REFERENCE', reference).replace('DIGEST', digest)
    right = await crypto.subtle.verify('Ed25519', imported, bytesOf(signature), new TextEncoder().encode(signed))
  } catch {
    return said.oldBrowser
  }
  if (!right) return said.wrong
  const stated = textOf(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(plain(statement))))
  return stated === digest ? said.agrees : said.differs
}
document.getElementById('check').onclick = async () => {
  const value = id => document.getElementById(id).value
  document.getElementById('answer').textContent = await check(value('statement'), value('code'))
}`

const escaped = (words: string) =>
  words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** The page as HTML. What it knows is the statement, the code and the shop's public key; nothing of the owner. */
export function verifyPage(page: VerifyPage): string {
  const { shopName, reference, statement, code, key } = page
  const said = {
    noCode: say('No: this is no code of a certificate, or a part of it is missing.'),
    otherKey: say('No: it was not signed with this key.'),
    oldBrowser: say('This browser cannot check signatures (Ed25519). Open the page in a newer one.'),
    wrong: say('No: the signature is not right. The code was made up, changed or misread.'),
    agrees: say('Yes: the certificate is as it was signed.'),
    differs: say('No: the certificate says something else than what was signed.'),
  }
  const title = escaped(say('Certificate {reference}', { reference }))
  const keyWords = say(
    'The signature is checked with the key {key}. Ask {shop} whether that is theirs: a made-up page would bring a key of its own.',
    { key: `<b>${escaped(key.id)}</b>`, shop: escaped(shopName) },
  )
  return `<!doctype html>
<html lang="${languageNow()}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<style>
body { font: 16px/1.5 system-ui, sans-serif; max-width: 46rem; margin: 2rem auto; padding: 0 1rem; color: #111; background: #fff }
textarea { width: 100%; box-sizing: border-box; font: 14px/1.4 ui-monospace, monospace }
label { display: block; font-weight: 600; margin-top: 1rem }
button { font: inherit; padding: .5rem 1.25rem; margin-top: 1rem }
#answer { font-size: 1.25rem; font-weight: 600; margin-top: 1rem }
</style>
<h1>${title}, ${escaped(shopName)}</h1>
<p>${escaped(say('Hold the facts against the paper and change here whatever the paper says otherwise. Scan the code of the paper into the second field. Then check.'))}</p>
<label for="statement">${escaped(say('What the certificate states'))}</label>
<textarea id="statement" rows="24" spellcheck="false">${escaped(statement)}</textarea>
<label for="code">${escaped(say('Its code'))}</label>
<textarea id="code" rows="4" spellcheck="false">${escaped(code)}</textarea>
<button id="check" type="button">${escaped(say('Check||the button'))}</button>
<p id="answer" role="status"></p>
<p>${keyWords}</p>
<script>
const publicKey = ${JSON.stringify(key.publicKey)}
const keyId = ${JSON.stringify(key.id)}
const said = ${JSON.stringify(said)}
const signedForm = ${JSON.stringify(signedText({ reference: 'REFERENCE', digest: 'DIGEST' }))}
${checking}
</script>
</html>
`
}
