/** A file as text, put into the program by the build. */
declare module '*?raw' {
  const text: string
  // biome-ignore lint/style/noDefaultExport: what the build makes of such an import
  export default text
}
