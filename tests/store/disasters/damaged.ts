import { readFileSync, truncateSync, writeFileSync } from 'node:fs'

/** Ways a database file is spoiled by a disk, a sync program or a hand; `share` of its length is where, for some. */
export const damages: Readonly<Record<string, (file: string, share?: number) => void>> = {
  header: file => overwrite(file, 0, 100),
  'first page': file => overwrite(file, 0, 4096),
  'page in the middle': (file, share) => overwrite(file, pageAt(file, share), 4096),
  truncated: (file, share) => truncateSync(file, pageAt(file, share)),
  empty: file => truncateSync(file, 0),
  'another file': file => writeFileSync(file, Buffer.alloc(9000, 'x')),
}

/** Never the first: that is a kind of its own. */
const pageAt = (file: string, share = 0.5) =>
  (1 + Math.floor(share * (readFileSync(file).length / 4096 - 1))) * 4096

function overwrite(file: string, at: number, length: number): void {
  const bytes = readFileSync(file)
  bytes.fill(0xff, at, at + length)
  writeFileSync(file, bytes)
}
