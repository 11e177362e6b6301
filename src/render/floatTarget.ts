/** A float picture that a pass draws into and a later one reads from. */
export type FloatTarget = {
  /** Makes it this size (keeping what it is where it already fits) and draws go into all of it. */
  readonly begin: (width: number, height: number) => void
  readonly bind: (unit: number) => void
  readonly dispose: () => void
}

export const createFloatTarget = (gl: WebGL2RenderingContext): FloatTarget => {
  const texture = gl.createTexture()
  const buffer = gl.createFramebuffer()
  let size = ''
  return {
    begin: (width, height) => {
      gl.bindFramebuffer(gl.FRAMEBUFFER, buffer)
      gl.disable(gl.SCISSOR_TEST)
      if (size !== `${width} ${height}`) {
        size = `${width} ${height}`
        gl.bindTexture(gl.TEXTURE_2D, texture)
        gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA32F, width, height, 0, gl.RGBA, gl.FLOAT, null)
        gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST)
        gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST)
        gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0)
      }
      gl.viewport(0, 0, width, height)
    },
    bind: (unit) => {
      gl.activeTexture(gl.TEXTURE0 + unit)
      gl.bindTexture(gl.TEXTURE_2D, texture)
    },
    dispose: () => {
      gl.deleteFramebuffer(buffer)
      gl.deleteTexture(texture)
    },
  }
}
