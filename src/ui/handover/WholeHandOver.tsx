import { useState } from 'react'
import { HAND_OVER_FORMATS } from '../../core/formats/handOverFormats.ts'
import { useApp } from '../appContext.ts'

/** Everything at once, and what of it others lose, as one file each. */
export const WholeHandOver = () => {
  const { services } = useApp()
  /** What is being written now; undefined while nothing is. */
  const [writing, setWriting] = useState<string>()
  const save = async (what: string, run: () => Promise<void>) => {
    setWriting(`Writing ${what}…`)
    try {
      await run()
    } finally {
      setWriting(undefined)
    }
  }
  const { handOver } = services
  return (
    <section aria-label="The whole hand-over">
      <h2>The whole hand-over</h2>
      <p>
        One .zip with the job, every list below and the statement of what each of them loses, cue by
        cue.
      </p>
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          disabled={writing !== undefined}
          onClick={() =>
            void save('the job and the statement', () =>
              handOver.saveWhole((format) =>
                setWriting(`Writing: ${HAND_OVER_FORMATS[format].title}…`),
              ),
            )
          }
        >
          Save the whole hand-over
        </button>
        <button
          type="button"
          className="button"
          disabled={writing !== undefined}
          onClick={() => void save('the statement of losses', handOver.saveStatement)}
        >
          Save the statement of losses
        </button>
      </div>
      <p role="status" className="dim">
        {writing}
      </p>
    </section>
  )
}
