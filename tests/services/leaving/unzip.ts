import { crc32, inflateRawSync } from 'node:zlib'
import Papa from 'papaparse'

/** The files of a ZIP by name, found by its directory and checked against it. */
export function unzip(zip: Buffer): Map<string, Buffer> {
  const end = zip.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]))
  const files = new Map<string, Buffer>()
  let at = zip.readUInt32LE(end + 16)
  for (let left = zip.readUInt16LE(end + 10); left > 0; left--) {
    const [crc, packed, size] = [16, 20, 24].map(offset => zip.readUInt32LE(at + offset))
    const nameLength = zip.readUInt16LE(at + 28)
    const name = zip.toString('utf8', at + 46, at + 46 + nameLength)
    const local = zip.readUInt32LE(at + 42)
    const from = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28)
    const bytes = inflateRawSync(zip.subarray(from, from + packed!))
    if (bytes.length !== size || crc32(bytes) !== crc)
      throw new Error(`${name} is not what its directory says`)
    files.set(name, bytes)
    at += 46 + nameLength + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32)
  }
  return files
}

/** A list as another program reads it, by its headings. */
export function readList(files: Map<string, Buffer>, name: string): Record<string, string>[] {
  const text = files.get(`tables/${name}.csv`)!.toString()
  const { data, errors, meta } = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
  })
  if (Object.keys(meta.renamedHeaders ?? {}).length > 0)
    throw new Error(`${name}: two columns of one heading`)
  if (errors.length > 0) throw new Error(JSON.stringify(errors))
  return data
}
