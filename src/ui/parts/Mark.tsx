/** A sign that is also said in words for those who do not see it. */
export const Mark = ({ sign, word }: { sign: string; word: string }) => (
  <span title={word}>
    <span aria-hidden="true">{sign}</span>
    <span className="unseen">{word}</span>
  </span>
)
