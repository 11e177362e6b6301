import { createGlProgram, type GlProgram } from './glProgram.ts'
import { COVER_VERTEX, withDefines } from './shaders.ts'

/** Programs by their fragment and what is defined in it, each made when it is first needed. */
export type ProgramSet = {
  readonly of: (fragment: string, defines: readonly string[]) => GlProgram
  readonly dispose: () => void
}

export const createProgramSet = (gl: WebGL2RenderingContext): ProgramSet => {
  const made = new Map<string, Map<string, GlProgram>>()
  return {
    of: (fragment, defines) => {
      const variants = made.get(fragment) ?? new Map<string, GlProgram>()
      made.set(fragment, variants)
      const name = defines.join(' ')
      const known = variants.get(name)
      if (known) return known
      const program = createGlProgram(gl, COVER_VERTEX, withDefines(fragment, defines))
      variants.set(name, program)
      return program
    },
    dispose: () => {
      for (const variants of made.values())
        for (const program of variants.values()) program.dispose()
    },
  }
}
