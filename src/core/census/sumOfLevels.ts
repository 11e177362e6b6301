import { type CueLook, LOOK_LEVELS, type LookLevels } from './cueLook.ts'

/** The levels of several looks taken together. */
export const sumOfLevels = (looks: Iterable<CueLook>): LookLevels => {
  const none = () => new Float32Array(LOOK_LEVELS)
  const sum: LookLevels = [none(), none(), none(), none()]
  for (const { levels } of looks)
    for (const [c, bins] of levels.entries()) {
      const into = sum[c] as Float32Array
      for (let i = 0; i < LOOK_LEVELS; i++) into[i] = (into[i] as number) + (bins[i] as number)
    }
  return sum
}
