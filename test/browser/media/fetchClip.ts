/** In a variable, because a literal `new URL(…, import.meta.url)` is rewritten by the bundler. */
const here = import.meta.url

/** A file of `test/media/` as a person would drop it. */
export const fetchClip = async (
  path: string,
  name = path.split('/').at(-1) ?? '',
): Promise<File> => {
  const address = new URL(`../../media/${path}`, here)
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`${address} is not there: ${answer.status}`)
  return new File([await answer.arrayBuffer()], name)
}
