import { crc32, deflateRawSync } from 'node:zlib'

/** A ZIP archive of these files (APPNOTE.TXT 4.3.7, 4.3.12, 4.3.16), by hand: what reads it is not what wrote it. */
export function zipOf(files: Readonly<Record<string, string>>): Buffer {
  const parts: Buffer[] = []
  const central: Buffer[] = []
  let at = 0
  for (const [name, text] of Object.entries(files)) {
    const bytes = Buffer.from(text)
    const packed = deflateRawSync(bytes)
    const fields = Buffer.alloc(26)
    fields.writeUInt16LE(20, 0)
    fields.writeUInt16LE(8, 4)
    fields.writeUInt32LE(crc32(bytes), 10)
    fields.writeUInt32LE(packed.length, 14)
    fields.writeUInt32LE(bytes.length, 18)
    fields.writeUInt16LE(Buffer.byteLength(name), 22)
    const where = Buffer.alloc(14)
    where.writeUInt32LE(at, 10)
    const local = Buffer.concat([Buffer.from('PK\x03\x04'), fields, Buffer.from(name), packed])
    central.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x00'), fields, where, Buffer.from(name)]))
    parts.push(local)
    at += local.length
  }
  const list = Buffer.concat(central)
  const end = Buffer.alloc(22)
  end.write('PK\x05\x06', 'latin1')
  end.writeUInt16LE(central.length, 8)
  end.writeUInt16LE(central.length, 10)
  end.writeUInt32LE(list.length, 12)
  end.writeUInt32LE(at, 16)
  return Buffer.concat([...parts, list, end])
}
