import { GRID_WIDTH } from './frameSignature.ts'
import type { FrameWindow } from './frameWindow.ts'

/**
 * Over how much of the picture two frames differ, 0…1: (Σ|d|)² / (N·Σd²), which is 1 where they
 * differ alike everywhere, and about the part of the area where they differ in that part only: a
 * caption or an insert.
 */
export const spreadOfDifference = (window: FrameWindow, m: number, n: number): number => {
  const [a, b] = [window.at(m), window.at(n)]
  if (!a || !b) return 0
  const area = window.area()
  let sum = 0
  let squares = 0
  for (let y = area.top; y < area.bottom; y++)
    for (let i = y * GRID_WIDTH + area.left, end = y * GRID_WIDTH + area.right; i < end; i++) {
      const d = Math.abs((a.luma[i] as number) - (b.luma[i] as number))
      sum += d
      squares += d * d
    }
  const count = (area.right - area.left) * (area.bottom - area.top)
  return squares > 0 ? (sum * sum) / (count * squares) : 0
}
