/** A compiled program and the places of its uniforms. */
export type GlProgram = {
  readonly use: () => void
  readonly place: (name: string) => WebGLUniformLocation | null
  readonly dispose: () => void
}

const compile = (gl: WebGL2RenderingContext, type: number, source: string): WebGLShader => {
  const shader = gl.createShader(type)
  if (!shader) throw new Error('The graphics context is lost.')
  gl.shaderSource(shader, source)
  gl.compileShader(shader)
  if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS) && !gl.isContextLost())
    throw new Error(`Bug: a shader does not compile: ${gl.getShaderInfoLog(shader)}`)
  return shader
}

export const createGlProgram = (
  gl: WebGL2RenderingContext,
  vertex: string,
  fragment: string,
): GlProgram => {
  const program = gl.createProgram()
  const shaders = [compile(gl, gl.VERTEX_SHADER, vertex), compile(gl, gl.FRAGMENT_SHADER, fragment)]
  for (const shader of shaders) gl.attachShader(program, shader)
  gl.linkProgram(program)
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost())
    throw new Error(`Bug: shaders do not link: ${gl.getProgramInfoLog(program)}`)
  for (const shader of shaders) gl.deleteShader(shader)
  const places = new Map<string, WebGLUniformLocation | null>()
  return {
    use: () => gl.useProgram(program),
    place: (name) => {
      const known = places.get(name)
      if (known !== undefined) return known
      const found = gl.getUniformLocation(program, name)
      places.set(name, found)
      return found
    },
    dispose: () => gl.deleteProgram(program),
  }
}
