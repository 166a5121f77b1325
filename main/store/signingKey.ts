/**
 * The key the shop signs its certificates with. It lies in `keys/` beside the database, which copies take along: lost,
 * every certificate handed out could no longer be checked.
 */

import { createHash, createPrivateKey, createPublicKey, generateKeyPairSync, sign, verify } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import { writeWhole } from './wholeFile.ts'

export interface SigningKey {
  /** The first 8 characters of the digest of the public key, base64url. */
  id: string
  /** 32 bytes, base64url (RFC 8032). */
  publicKey: string
}

export interface Signer {
  /** The key that signs; made and kept the first time it is asked for, which is the first start. */
  key(): SigningKey
  /** The signature of the text's UTF-8, base64url. */
  sign(text: string): string
  /** Whether a key of this id is here. */
  has(id: string): boolean
  /** Whether it is that key's signature of the text. */
  verify(text: string, signature: string, id: string): boolean
}

interface Kept extends SigningKey {
  /** PKCS 8, DER, base64. */
  privateKey: string
}

/** The signer of a data folder. A restore may bring a second key: all are checked with, the first signs. */
export function openSigner(dataDir: string): Signer {
  const folder = join(dataDir, 'keys')
  const all = (): Kept[] =>
    existsSync(folder)
      ? readdirSync(folder)
          .filter(name => /^signing-[\w-]{8}\.json$/.test(name))
          .sort()
          .map(name => readKey(join(folder, name)))
      : []
  const own = (): Kept => all()[0] ?? makeKey(folder)
  return {
    key: () => {
      const { id, publicKey } = own()
      return { id, publicKey }
    },
    sign: text => {
      const key = createPrivateKey({
        key: Buffer.from(own().privateKey, 'base64'),
        format: 'der',
        type: 'pkcs8',
      })
      return sign(null, Buffer.from(text), key).toString('base64url')
    },
    has: id => all().some(key => key.id === id),
    verify: (text, signature, id) => {
      const kept = all().find(key => key.id === id)
      if (!kept) return false
      const key = createPublicKey({ key: { kty: 'OKP', crv: 'Ed25519', x: kept.publicKey }, format: 'jwk' })
      return verify(null, Buffer.from(text), key, Buffer.from(signature, 'base64url'))
    },
  }
}

function makeKey(folder: string): Kept {
  const { publicKey, privateKey } = generateKeyPairSync('ed25519')
  const raw = publicKey.export({ format: 'jwk' }).x!
  const kept: Kept = {
    id: createHash('sha256').update(Buffer.from(raw, 'base64url')).digest('base64url').slice(0, 8),
    publicKey: raw,
    privateKey: privateKey.export({ format: 'der', type: 'pkcs8' }).toString('base64'),
  }
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  writeWhole(join(folder, `signing-${kept.id}.json`), JSON.stringify(kept))
  return kept
}

function readKey(file: string): Kept {
  try {
    const { id, publicKey, privateKey } = JSON.parse(readFileSync(file, 'utf8')) as Kept
    createPrivateKey({ key: Buffer.from(privateKey, 'base64'), format: 'der', type: 'pkcs8' })
    return { id, publicKey, privateKey }
  } catch {
    throw new Refusal(
      'key-unreadable',
      'key',
      null,
      say(
        'The key in {file} cannot be read: put the file back from a copy; certificates are checked with it.',
        { file },
      ),
    )
  }
}
