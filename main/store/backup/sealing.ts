/*
 * How a copy is encrypted, chunk by chunk, so that a file of any size passes through a little memory and no byte is
 * believed before it was proven: AES-256-GCM over frames of 64 KiB. A frame's nonce is its number and whether it is the
 * last, so that frames cannot be dropped, doubled or put in another order unnoticed (the STREAM construction of Hoang,
 * Reyhanitabar, Rogaway and Vizár, "Online Authenticated-Encryption and its Nonce-Reuse Misuse-Resistance", 2015). The
 * key is the passphrase's by scrypt with a salt of the file's own, so no key meets a nonce twice.
 */
import { createCipheriv, createDecipheriv, createHmac, randomBytes, scrypt } from 'node:crypto'

/** What opens a sealed copy, beside the passphrase. */
export interface Lock {
  /** scrypt's salt, base64. */
  salt: string
  /** scrypt's cost N, a power of two; its r is 8 and its p is 1. */
  cost: number
  /** Tells a wrong passphrase from a damaged file: base64. */
  check: string
}

type Chunks = AsyncIterable<Uint8Array>

const frameBytes = 64 * 1024
const tagBytes = 16
/** scrypt at this cost takes 128 MiB and about half a second (OWASP Password Storage Cheat Sheet: N=2^17, r=8, p=1). */
const usualCost = 2 ** 17
/** A file from elsewhere may not ask for more than 1 GiB. */
const mostCost = 2 ** 20

/** Makes a lock and its key for a passphrase. */
export async function makeLock(passphrase: string, cost = usualCost): Promise<{ lock: Lock; key: Buffer }> {
  const salt = randomBytes(16)
  const key = await keyOf(passphrase, salt, cost)
  return { lock: { salt: salt.toString('base64'), cost, check: checkOf(key) }, key }
}

/** The key of a lock; null where the passphrase is another. */
export async function openLock(lock: Lock, passphrase: string): Promise<Buffer | null> {
  if (!Number.isInteger(Math.log2(lock.cost)) || lock.cost < 2 || lock.cost > mostCost) return null
  const key = await keyOf(passphrase, Buffer.from(lock.salt, 'base64'), lock.cost)
  return checkOf(key) === lock.check ? key : null
}

function keyOf(passphrase: string, salt: Buffer, cost: number): Promise<Buffer> {
  const limits = { N: cost, r: 8, p: 1, maxmem: cost * 8 * 128 + 1024 * 1024 }
  return new Promise((resolve, reject) =>
    // The same letters may be typed in several ways of writing them.
    scrypt(passphrase.normalize('NFKC'), salt, 32, limits, (error, key) =>
      error ? reject(error) : resolve(key),
    ),
  )
}

function checkOf(key: Buffer): string {
  return createHmac('sha256', key).update('lustrum copy').digest().subarray(0, 16).toString('base64')
}

function nonceOf(frame: number, last: boolean): Buffer {
  const nonce = Buffer.alloc(12)
  nonce.writeUInt32BE(frame, 7)
  nonce[11] = last ? 1 : 0
  return nonce
}

/** The chunks encrypted; `bound` is what the first frame vouches for besides itself. */
export async function* seal(chunks: Chunks, key: Buffer, bound: Buffer): AsyncGenerator<Buffer> {
  for await (const { bytes, frame, last } of framesOf(chunks, frameBytes)) {
    const cipher = createCipheriv('aes-256-gcm', key, nonceOf(frame, last))
    if (frame === 0) cipher.setAAD(bound)
    yield Buffer.concat([cipher.update(bytes), cipher.final(), cipher.getAuthTag()])
  }
}

/** The chunks as they were before `seal`. Throws at the first frame that is not as it was written, or missing. */
export async function* unseal(chunks: Chunks, key: Buffer, bound: Buffer): AsyncGenerator<Buffer> {
  for await (const { bytes, frame, last } of framesOf(chunks, frameBytes + tagBytes)) {
    if (bytes.length < tagBytes) throw new Error('the file was cut short')
    const decipher = createDecipheriv('aes-256-gcm', key, nonceOf(frame, last), { authTagLength: tagBytes })
    if (frame === 0) decipher.setAAD(bound)
    decipher.setAuthTag(bytes.subarray(-tagBytes))
    yield Buffer.concat([decipher.update(bytes.subarray(0, -tagBytes)), decipher.final()])
  }
}

/** The chunks cut anew into frames of this size; only the last may be smaller, and there is always a last. */
async function* framesOf(chunks: Chunks, size: number) {
  let pending: Uint8Array[] = []
  let held = 0
  let frame = 0
  for await (const chunk of chunks) {
    pending.push(chunk)
    held += chunk.length
    // Not before it is known that more follows: the last frame is marked as such.
    if (held <= size) continue
    const all = Buffer.concat(pending)
    let from = 0
    for (; all.length - from > size; from += size)
      yield { bytes: all.subarray(from, from + size), frame: frame++, last: false }
    pending = [all.subarray(from)]
    held = all.length - from
  }
  yield { bytes: Buffer.concat(pending), frame, last: true }
}
