/** An outcome as it is shown: its sign, and its word for one and for several. */
export type OutcomeWords = { readonly sign: string; readonly word: string; readonly many: string }

export type OutcomeFilterProps<Outcome extends string> = {
  readonly label: string
  readonly total: number
  /** Every outcome, in the order they are listed. */
  readonly outcomes: readonly Outcome[]
  readonly words: Readonly<Record<Outcome, OutcomeWords>>
  readonly counts: Readonly<Record<Outcome, number>>
  readonly filter: Outcome | 'all'
  readonly onFilter: (filter: Outcome | 'all') => void
}

/** How many rows have each outcome; pressed, only those are listed. */
export const OutcomeFilter = <Outcome extends string>({
  label,
  total,
  outcomes,
  words,
  counts,
  filter,
  onFilter,
}: OutcomeFilterProps<Outcome>) => (
  <fieldset className="import-filter" aria-label={label}>
    <button
      type="button"
      className={filter === 'all' ? 'button is-on' : 'button'}
      aria-pressed={filter === 'all'}
      onClick={() => onFilter('all')}
    >
      {total} in all
    </button>
    {outcomes.map((outcome) => {
      const { sign, word, many } = words[outcome]
      const count = counts[outcome]
      return (
        <button
          type="button"
          key={outcome}
          className={filter === outcome ? 'button is-on' : 'button'}
          aria-pressed={filter === outcome}
          disabled={count === 0}
          onClick={() => onFilter(filter === outcome ? 'all' : outcome)}
        >
          <span aria-hidden="true">{sign}</span> {count} {count === 1 ? word : many}
        </button>
      )
    })}
  </fieldset>
)
