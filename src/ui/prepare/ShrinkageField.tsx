import { useId, useState } from 'react'
import { PITCHES, shrinkage } from '../../core/film/shrinkage.ts'
import type { Gauge } from '../../core/time/footage.ts'
import { NumberCell } from '../parts/NumberCell.tsx'
import { formatNumber } from '../parts/numberText.ts'

export type ShrinkageFieldProps = {
  readonly gauge: Gauge
  /** As a part; null: not measured. */
  readonly value: number | null
  readonly onTake: (value: number | null) => void
}

const percent = (part: number): string => `${formatNumber(100 * part, 2)} %`

/** Shrinkage as it is known, or from the length of some pitches as measured. */
export const ShrinkageField = ({ gauge, value, onTake }: ShrinkageFieldProps) => {
  const id = useId()
  const pitches = PITCHES[gauge] ?? []
  const [count, setCount] = useState<number | undefined>(100)
  const [measured, setMeasured] = useState<number>()
  const [at, setAt] = useState(0)
  const pitch = pitches[at] ?? pitches[0]
  const found =
    pitch && count !== undefined && measured !== undefined && count > 0
      ? shrinkage(measured, count, pitch.mm)
      : undefined
  return (
    <fieldset className="shrinkage">
      <legend>Shrinkage</legend>
      <div className="inline-fields">
        <NumberCell
          label="Shrinkage, %"
          value={value === null ? undefined : Number((100 * value).toFixed(4))}
          onCommit={(typed) => onTake(typed === undefined ? null : typed / 100)}
        />
        <span>%, or measured:</span>
      </div>
      {pitch ? (
        <div className="inline-fields">
          <NumberCell label="Pitches measured" value={count} onCommit={setCount} />
          <label htmlFor={id}>pitches of</label>
          <select id={id} value={at} onChange={(event) => setAt(Number(event.currentTarget.value))}>
            {pitches.map(({ name }, index) => (
              <option key={name} value={index}>
                {name}
              </option>
            ))}
          </select>
          <span>take</span>
          <NumberCell label="Their length, mm" value={measured} onCommit={setMeasured} />
          <span>mm</span>
          {found !== undefined && (
            <button type="button" className="button" onClick={() => onTake(Math.max(0, found))}>
              Take {percent(found)}
            </button>
          )}
        </div>
      ) : (
        <p className="dim">The pitch of this gauge is not known here.</p>
      )}
    </fieldset>
  )
}
