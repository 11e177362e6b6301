import { assert } from '../core/base/assert.ts'
import type { KernelModule } from './kernelModule.ts'

const PAGE = 65_536
/** 16-byte vectors are loaded and stored past the end of what they belong to. */
const SLACK = 64
/** The last address a 32-bit module can reach. */
const LIMIT = 2 ** 32 - PAGE

/** Hands out the memory of a kernel from one address up; nothing is given back singly. */
export type KernelMemory = {
  /** The address of `bytes` bytes, and some after them. */
  take(bytes: number): number
  /** Grows the memory to hold all that was taken. Views made before it are void. */
  settle(): ArrayBuffer
}

export const kernelMemory = ({ memory }: KernelModule, from: number): KernelMemory => {
  let next = from
  return {
    take: (bytes) => {
      const address = Math.ceil(next / 64) * 64
      next = address + bytes + SLACK
      return address
    },
    settle: () => {
      assert(next < LIMIT, `a picture needs ${next} bytes of kernel memory`)
      const missing = next - memory.buffer.byteLength
      if (missing > 0) memory.grow(Math.ceil(missing / PAGE))
      return memory.buffer as ArrayBuffer
    },
  }
}
