import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const folders = ['base', 'facts', 'blueprint', 'machine', 'bench', 'server', 'cli', 'store', 'report', 'web']
const root = new URL('../../../src', import.meta.url).pathname

/** A stroke where an expression may begin, and no comment: most files have none and need not be parsed. */
const mayHoldOne = /(?:^|[=([,:?!&|{};]|=>|return)\s*\/(?![/*])/m

/** Every regular expression that stands in the sources, once. */
const regexes = (): ReadonlyMap<string, string> => {
  const found = new Map<string, string>()
  for (const folder of folders)
    for (const name of readdirSync(join(root, folder), { recursive: true }) as string[]) {
      if (!/\.tsx?$/.test(name)) continue
      const path = join(root, folder, name)
      const text = readFileSync(path, 'utf8')
      if (!mayHoldOne.test(text)) continue
      const source = ts.createSourceFile(
        name,
        text,
        ts.ScriptTarget.Latest,
        false,
        name.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
      )
      const walk = (node: ts.Node): void => {
        if (ts.isRegularExpressionLiteral(node)) found.set(node.text, `${folder}/${name}`)
        ts.forEachChild(node, walk)
      }
      walk(source)
    }
  return found
}

/** Long texts of few kinds of signs that never quite fit: what makes an expression that can be read in many ways try them all. */
const bombs = (literal: string): readonly string[] => {
  const signs = new Set([
    'a',
    '0',
    ' ',
    '.',
    '-',
    ',',
    '/',
    '"',
    ...literal.replace(/\\[a-zA-Z]/g, '').replace(/[^\p{L}\p{N}.,:/ _-]/gu, ''),
  ])
  const pumped = [...signs].map((sign) => `${sign.repeat(2000)}\u0001`)
  return [
    ...pumped,
    `${'a1'.repeat(1000)}\u0001`,
    `${'0.'.repeat(1000)}\u0001`,
    `${'a '.repeat(1000)}\u0001`,
    `${'1,'.repeat(1000)}\u0001`,
  ]
}

/** Fields hold at most 2000 signs; a thousand times what a sound expression takes for as many. */
const longestMs = 200

describe('regular expressions', () => {
  it('take no longer over a text made to hold them up', () => {
    const all = regexes()
    expect(all.size).toBeGreaterThan(40)
    const slow: string[] = []
    for (const [literal, where] of all) {
      const end = literal.lastIndexOf('/')
      const expression = new RegExp(literal.slice(1, end), literal.slice(end + 1))
      const start = performance.now()
      for (const bomb of bombs(literal)) {
        expression.lastIndex = 0
        bomb.replace(expression, '')
        if (performance.now() - start > longestMs * 5) break
      }
      const ms = performance.now() - start
      if (ms > longestMs) slow.push(`${where}: ${literal} ${Math.round(ms)} ms`)
    }
    expect(slow).toEqual([])
  })
})
