import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { type DeliveredForm, deliveredBytes } from '../../src/core/transfer/deliveredForm.ts'
import { loadKernel } from '../../src/kernel/loadKernel.ts'
import { BENCH_GRADE } from './benchGrade.ts'
import { inTurns } from './kernelBench.ts'

const WORDS: DeliveredForm = { kind: 'words10' }
const PLANES: DeliveredForm = { kind: 'planes', matrix: 'bt709', depth: 8, layout: '420' }
const RGB16: DeliveredForm = { kind: 'rgb16', isLittleEndian: true }

/** What laying out graded pictures of 8-bit 4:2:0 takes the kernel: milliseconds a frame. */
export const deliverTimes = async (root: string, pictures: readonly Planes[]) => {
  const loaded = await loadKernel(readFileSync(join(root, '.cache/kernel/kernel.wasm')))
  if (!loaded.ok) throw new Error(loaded.problems[0].says)
  const kernel = loaded.value
  const [first] = pictures
  if (!first) throw new Error('no picture')
  const input = (planes: Planes) => ({
    planes,
    coding: { matrix: 'bt709', range: 'narrow' } as const,
    grade: BENCH_GRADE,
    framing: IDENTITY_FRAMING,
  })
  const room = (form: DeliveredForm) =>
    new Uint8Array(deliveredBytes(form, first.width, first.height))
  const [words, planes8, rgb16] = [room(WORDS), room(PLANES), room(RGB16)]
  const copied = words.map((_, i) => i)
  const to = new Uint8Array(copied.length)
  const limiter = { limiting: 'soft', profile: EBU_R103_V3 } as const
  return inTurns(pictures, {
    copy: () => to.set(copied),
    words: (planes) => {
      kernel.deliver(input(planes), { form: WORDS }, words)
    },
    limited: (planes) => {
      kernel.deliver(input(planes), { form: WORDS, limiter }, words)
    },
    rgb16: (planes) => {
      kernel.deliver(input(planes), { form: RGB16 }, rgb16)
    },
    planes: (planes) => {
      kernel.deliver(input(planes), { form: PLANES }, planes8)
    },
  })
}
