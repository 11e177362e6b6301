import { afterEach, expect, test, vi } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { loadKernel } from '../../src/kernel/loadKernel.ts'
import { kernelBytes } from './builtKernel.ts'
import { noisePlanes, seeded } from './randomPictures.ts'

afterEach(() => {
  vi.unstubAllGlobals()
  vi.restoreAllMocks()
})

test('the built kernel loads', async () => {
  expect((await loadKernel(kernelBytes())).ok).toBe(true)
})

test.each([
  ['bytes that are no module', new Uint8Array([1, 2, 3])],
  ['a module that is not the kernel', new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0])],
])('%s are a problem', async (_, bytes) => {
  const loaded = await loadKernel(bytes)
  expect(loaded).toMatchObject({ ok: false, problems: [{ code: 'malformed' }] })
})

test('a host without vectors gets the reference, told from the kernel', async () => {
  const built = await loadKernel(kernelBytes())
  vi.spyOn(WebAssembly, 'validate').mockReturnValue(false)
  const loaded = await loadKernel(kernelBytes())
  if (!loaded.ok || !built.ok) throw new Error('no kernel')
  expect([built.value.isReference, loaded.value.isReference]).toEqual([false, true])
})

test('so does a host without WebAssembly', async () => {
  const bytes = kernelBytes()
  vi.stubGlobal('WebAssembly', undefined)
  expect(await loadKernel(bytes)).toMatchObject({ ok: true, value: { isReference: true } })
})

test('memory grows with the picture and not with the number of calls', async () => {
  const memories: WebAssembly.Memory[] = []
  const { instantiate } = WebAssembly
  vi.spyOn(WebAssembly, 'instantiate').mockImplementation((async (bytes: BufferSource) => {
    const loaded = await instantiate(bytes, {})
    memories.push(loaded.instance.exports.memory as WebAssembly.Memory)
    return loaded
  }) as never)
  const loaded = await loadKernel(kernelBytes())
  if (!loaded.ok) throw new Error(loaded.problems[0].says)
  const kernel = loaded.value
  const run = () => {
    const input = {
      planes: noisePlanes(seeded(1), '420', 8, 640, 90),
      coding: { matrix: 'bt709', range: 'narrow' },
      grade: { ...IDENTITY_GRADE, gamma: [Math.random() + 0.5, 1, 2] },
      framing: { ...IDENTITY_FRAMING, zoom: 1.5 },
    } as const
    const codes = kernel.deliverCodes(input, 'bt709')
    kernel.measureLevels(input, 'bt709', EBU_R103_V3)
    kernel.lumaWaveform(codes, 320)
    kernel.vectorscope(codes, 256)
    return memories[0]?.buffer.byteLength
  }
  const after = run()
  for (let i = 0; i < 30; i++) expect(run()).toBe(after)
})
