import { readFileSync, truncateSync, writeFileSync } from 'node:fs'

/** Ways a database file is spoiled by a disk, a sync program or a hand. */
export const damages: Readonly<Record<string, (file: string) => void>> = {
  header: file => overwrite(file, 0, 100),
  'first page': file => overwrite(file, 0, 4096),
  'page in the middle': file => overwrite(file, middle(file), 4096),
  truncated: file => truncateSync(file, middle(file)),
  empty: file => truncateSync(file, 0),
  'another file': file => writeFileSync(file, Buffer.alloc(9000, 'x')),
}

const middle = (file: string) => Math.floor(readFileSync(file).length / 2 / 4096) * 4096

function overwrite(file: string, at: number, length: number): void {
  const bytes = readFileSync(file)
  bytes.fill(0xff, at, at + length)
  writeFileSync(file, bytes)
}
