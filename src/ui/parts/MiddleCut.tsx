/** Characters at the end of a text that stay in sight. */
const KEPT = 18

/** Where the part that stays in sight begins: at a word, where one begins there. */
const keptFrom = (text: string): number => {
  const from = Math.max(0, text.length - KEPT)
  const word = text.slice(from).search(/[\s_.-]/u)
  return word < 0 ? from : from + word
}

/** A text on one line that is cut in its middle, as names made by machines differ in their ends. */
export const MiddleCut = ({ text }: { text: string }) => {
  if (text.length <= KEPT) return <span className="one-line">{text}</span>
  const from = keptFrom(text)
  return (
    <span className="middle-cut">
      <span>{text.slice(0, from)}</span>
      <span>{text.slice(from)}</span>
    </span>
  )
}
