import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findJsonLines } from '../../../../src/core/base/json/findJsonLines.ts'
import {
  type JsonNode,
  jsonRecord,
  jsonWord,
  memberAt,
  numberOf,
  withMember,
} from '../../../../src/core/base/json/jsonNode.ts'
import { linePlaces } from '../../../../src/core/base/json/linePlaces.ts'
import { jsonNumber, jsonOf, plainJson } from '../../../../src/core/base/json/plainJson.ts'
import { readJsonTree } from '../../../../src/core/base/json/readJsonTree.ts'
import { scanJson } from '../../../../src/core/base/json/scanJson.ts'
import { writeJsonTree } from '../../../../src/core/base/json/writeJsonTree.ts'

const treeOf = (text: string, takesNonFinite = false): JsonNode => {
  const read = readJsonTree(text, { takesNonFinite })
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

const refusalOf = (text: string) => {
  const read = readJsonTree(text)
  return read.ok ? undefined : { code: read.problems[0].code, at: read.problems[0].at }
}

const NO_EVENTS = {
  open: () => undefined,
  close: () => {},
  name: () => undefined,
  scalar: () => undefined,
}

/** Whether `JSON.parse` takes a text. */
const isParsed = (text: string): boolean => {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

describe('a JSON tree', () => {
  it('holds what JSON.parse gives', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(plainJson(treeOf(text))).toEqual(JSON.parse(text))
      }),
      { seed: 1, numRuns: 500 },
    )
  })

  it('is laid out as JSON.stringify does it, but for lists of numbers', () => {
    expect(writeJsonTree(jsonOf({ a: [1, -0, 0.5], b: [[], [1, 'x']] }))).toBe(
      '{\n  "a": [1, -0.0, 0.5],\n  "b": [\n    [],\n    [\n      1,\n      "x"\n    ]\n  ]\n}',
    )
    const inOneLine = (spelt: string) =>
      spelt.replaceAll(
        /\[\s+(-?[\d.e+-]+(?:,\s+-?[\d.e+-]+)*)\s+\]/gu,
        (_, numbers) => `[${String(numbers).replaceAll(/\s+/gu, ' ')}]`,
      )
    fc.assert(
      fc.property(
        fc.json({ stringUnit: fc.constantFrom('a', '"', '\\', '\n', 'é', '🎞') }),
        (text) => {
          const value = JSON.parse(text)
          const spelt = JSON.stringify(value, undefined, 2)
          expect(writeJsonTree(treeOf(spelt))).toBe(inOneLine(spelt))
          expect(writeJsonTree(treeOf(spelt), 0)).toBe(JSON.stringify(value))
        },
      ),
      { seed: 2, numRuns: 500 },
    )
  })

  it('is the same after it is written and read again', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        const written = writeJsonTree(treeOf(text))
        expect(writeJsonTree(treeOf(written))).toBe(written)
      }),
      { seed: 3, numRuns: 200 },
    )
  })

  it('is refused just where JSON.parse refuses, for texts with small damages', () => {
    const pieces = ['{', '}', '[', ']', ',', ':', '"a"', '"\\u00e9"', '"', '\\', '-', '0', '01']
    const more = ['1.5', '1.', '.5', '1e5', '1e', '+1', 'true', 'nul', 'null', ' ', '\n', '\t']
    const text = fc
      .array(fc.constantFrom(...pieces, ...more), { maxLength: 7 })
      .map((parts) => parts.join(''))
    const damaged = fc
      .tuple(fc.json(), fc.nat(), fc.constantFrom(...pieces, ...more))
      .map(([json, at, put]) => {
        const place = at % (json.length + 1)
        return json.slice(0, place) + put + json.slice(place + (at % 2))
      })
    fc.assert(
      fc.property(fc.oneof(text, damaged), (each) => {
        expect(scanJson(each, NO_EVENTS) === undefined).toBe(isParsed(each))
      }),
      { seed: 4, numRuns: 4000 },
    )
  })

  it('keeps order, spelling of numbers, names and halves of characters', () => {
    const text =
      '{"b":9223372036854775807,"2":-0,"1":1.0,"a":1E+2,"__proto__":{"x":0.10},"h":"\\ud83c","toString":1}'
    const tree = treeOf(text)
    expect(writeJsonTree(tree, 0)).toBe(text)
    const plain = plainJson(tree) as Record<string, unknown>
    expect(Object.getPrototypeOf(plain)).toBe(Object.prototype)
    expect(Object.keys(plain)).toContain('__proto__')
    expect(numberOf(memberAt(tree, '__proto__', 'x'))).toBe(0.1)
    expect(memberAt(jsonRecord([]), 'toString')).toBeUndefined()
  })

  it('takes NaN and infinities only where they are asked for', () => {
    const text = '[NaN,Infinity,-Infinity,Inf,-Inf]'
    expect(refusalOf(text)).toEqual({ code: 'malformed', at: { line: 1, column: 2 } })
    expect(writeJsonTree(treeOf(text, true), 0)).toBe(text)
    expect(plainJson(treeOf(text, true))).toEqual([NaN, Infinity, -Infinity, Infinity, -Infinity])
  })

  it('passes over a byte order mark', () => {
    expect(plainJson(treeOf('\ufeff{"a": 1}'))).toEqual({ a: 1 })
  })

  it.each([
    ['a value left out', '{\n  "a": 1,\n  "b":\n}', 'malformed', 4, 1],
    ['a comma left out', '[1,\r\n 2 3]', 'malformed', 2, 4],
    ['a name without quotes', '{\n a: 1}', 'malformed', 2, 2],
    ['a colon left out', '{"a" 1}', 'malformed', 1, 6],
    ['a line end in a string', '["a\nb"]', 'malformed', 1, 4],
    ['an escape that is none', '["a\\x"]', 'malformed', 1, 4],
    ['half a file', '{"a": [1, 2', 'malformed', 1, 12],
    ['more after its end', '{}\n{}', 'malformed', 2, 1],
    ['nothing', '', 'malformed', 1, 1],
    ['a name that is there twice', '{"a": 1,\n"\\u0061": 2}', 'conflict', 2, 1],
    ['too great a depth', `${'['.repeat(65)}${']'.repeat(65)}`, 'too-large', 1, 65],
  ])('is refused for %s, with its place', (_, text, code, line, column) => {
    expect(refusalOf(text)).toEqual({ code, at: { line, column } })
  })

  it('finds a name that is there twice among many', () => {
    const names = Array.from({ length: 40 }, (_, i) => `"n${i}": ${i}`)
    expect(refusalOf(`{${[...names, '"n3": 0'].join(',\n')}}`)).toEqual({
      code: 'conflict',
      at: { line: 41, column: 1 },
    })
    expect(refusalOf(`{${names.join(',')}}`)).toBeUndefined()
  })

  it('is gone through at any depth where none is set', () => {
    const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`
    expect(scanJson(deep, NO_EVENTS)).toBeUndefined()
  })

  it('has members set where they stand, put last, or taken out', () => {
    const record = jsonRecord([
      ['a', jsonWord(null)],
      ['b', jsonWord(true)],
    ])
    const set = withMember(withMember(record, 'a', jsonNumber(1)), 'c', jsonNumber(-0))
    expect(writeJsonTree(set, 0)).toBe('{"a":1.0,"b":true,"c":-0.0}')
    expect(writeJsonTree(withMember(record, 'a', undefined), 0)).toBe('{"b":true}')
    expect(withMember(record, 'x', undefined)).toBe(record)
  })

  it('is made of plain data, doubles to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const read = treeOf(writeJsonTree(jsonOf({ value, none: undefined })))
        expect(plainJson(read)).toEqual({ value })
      }),
      { seed: 5, numRuns: 500 },
    )
  })
})

describe('places in a text', () => {
  it('are counted from 1, whatever ends a line', () => {
    const placeOf = linePlaces('ab\ncd\r\nef\rgh')
    expect([0, 2, 3, 7, 8, 10, 12].map(placeOf)).toEqual([
      { line: 1, column: 1 },
      { line: 1, column: 3 },
      { line: 2, column: 1 },
      { line: 3, column: 1 },
      { line: 3, column: 2 },
      { line: 4, column: 1 },
      { line: 4, column: 3 },
    ])
  })
})

describe('lines of paths', () => {
  const text = '{\n"a": [\n{"b": 1},\n{"b": [5,\n6]}\n],\n"c": {\n"__proto__": 2}}'

  it('are found for what is there', () => {
    expect(findJsonLines(text, ['a', 'a.0', 'a.0.b', 'a.1.b.1', 'c.__proto__'])).toEqual([
      2, 3, 3, 5, 8,
    ])
  })

  it('are those of the last step that is there for what is not', () => {
    expect(findJsonLines(text, ['a.1.x', 'a.7', 'x', '', 'c.y.z'])).toEqual([4, 2, 1, 1, 7])
  })

  it('agree with the places of the tree', () => {
    const paths = (node: JsonNode, path: readonly string[]): (readonly [string, number])[] => [
      [path.join('.'), node.at],
      ...(node.kind === 'record'
        ? node.members.flatMap(({ name, value }) => paths(value, [...path, name]))
        : node.kind === 'list'
          ? node.items.flatMap((item, i) => paths(item, [...path, String(i)]))
          : []),
    ]
    const key = fc.stringMatching(/^[a-z]{1,3}$/u)
    const { tree } = fc.letrec((tie) => ({
      tree: fc.oneof(
        { depthSize: 'small' },
        fc.integer(),
        fc.array(tie('tree'), { maxLength: 4 }),
        fc.dictionary(key, tie('tree'), { maxKeys: 4 }),
      ),
    }))
    fc.assert(
      fc.property(tree, (value) => {
        const spelt = JSON.stringify(value, undefined, 1)
        const all = paths(treeOf(spelt), []).slice(1)
        const placeOf = linePlaces(spelt)
        expect(
          findJsonLines(
            spelt,
            all.map(([path]) => path),
          ),
        ).toEqual(all.map(([, at]) => placeOf(at).line))
      }),
      { seed: 6, numRuns: 300 },
    )
  })
})
