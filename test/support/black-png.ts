import { deflateSync } from 'node:zlib'

/** A square black PNG of one bit a pixel, by the PNG Specification (Third Edition), sections 5 and 11.2 (from memory). */
export const blackPng = (sidePx: number): Buffer => {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(sidePx, 0)
  head.writeUInt32BE(sidePx, 4)
  head[8] = 1
  const rows = Buffer.alloc((Math.ceil(sidePx / 8) + 1) * sidePx)
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

const chunk = (kind: string, data: Buffer): Buffer => {
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const body = Buffer.concat([Buffer.from(kind, 'latin1'), data])
  const check = Buffer.alloc(4)
  check.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, check])
}

const crc32 = (bytes: Buffer): number => {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0)
  }
  return (crc ^ 0xffffffff) >>> 0
}
