import { describe, expect, it } from 'vitest'
import { passphraseHashing } from '../../../../src/facts/sign-in.ts'
import { makeSecrets } from '../../../../src/server/sign-in/passphrase-hash.ts'

const cheap = makeSecrets({ ln: 4, r: 8, p: 1 })
const base64 = (hex: string): string => Buffer.from(hex, 'hex').toString('base64').replaceAll('=', '')

describe('passphrases', () => {
  // RFC 7914, section 12, third test vector: "pleaseletmein", "SodiumChloride", N = 16384, r = 8, p = 1 (2016; retrieved).
  const rfc =
    '7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887'
  const kept = `$scrypt$ln=14,r=8,p=1$${Buffer.from('SodiumChloride').toString('base64').replaceAll('=', '')}$${base64(rfc)}`

  it('are matched as the test vector of RFC 7914 says', async () => {
    expect(await cheap.matches('pleaseletmein', kept)).toBe(true)
    expect(await cheap.matches('pleaseletmeIn', kept)).toBe(false)
  })

  it('are hashed at no less than the OWASP cheat sheet asks for: N = 2^17, r = 8, p = 1', async () => {
    expect(passphraseHashing).toMatchObject({ ln: 17, r: 8, p: 1 })
    expect(passphraseHashing.saltBytes).toBeGreaterThanOrEqual(16)
    const hash = await makeSecrets().hash('ten or more signs')
    expect(hash).toMatch(/^\$scrypt\$ln=17,r=8,p=1\$/)
    expect(await makeSecrets().matches('ten or more signs', hash)).toBe(true)
  })

  it('have each a salt of their own, and one typed on another keyboard is the same', async () => {
    const [one, other] = await Promise.all([cheap.hash('Käse und Brot'), cheap.hash('Käse und Brot')])
    expect(one).not.toBe(other)
    // NFKC by the Unicode Standard, annex 15: ä as one sign or as a with a mark.
    expect(await cheap.matches('Ka\u0308se und Brot', one)).toBe(true)
  })

  it.each([
    null,
    '',
    'plain',
    '$scrypt$ln=99,r=8,p=1$AAAA$AAAAAAAAAAAAAAAAAAAAAAAA',
    '$scrypt$ln=4,r=0,p=1$AAAA$AAAAAAAAAAAAAAAAAAAAAAAA',
  ])('are matched by nothing where %s is kept', async (nothing) =>
    expect(await cheap.matches('anything at all', nothing)).toBe(false),
  )
})

describe('tokens', () => {
  it('are 256 bits that never come twice, and kept as SHA-256', () => {
    const tokens = Array.from({ length: 200 }, () => cheap.newToken())
    expect(new Set(tokens).size).toBe(200)
    expect(Buffer.from(tokens[0] ?? '', 'base64url')).toHaveLength(32)
    // FIPS 180-4 example: SHA-256 of "abc" (from memory).
    expect(cheap.tokenHash('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  })
})
