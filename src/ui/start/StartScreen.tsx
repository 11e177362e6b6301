import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import { setOpened } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import type { ShelvedJob } from '../services.ts'
import { STRINGS } from '../strings.ts'

/** The first screen: open a reel, a job, or the sample; what was worked on before. */
export const StartScreen = () => {
  const { store, services } = useApp()
  const isOpening = useAppState((state) => state.media === 'opening')
  const [kept, setKept] = useState<readonly ShelvedJob[]>([])
  useEffect(() => {
    void services.shelvedJobs().then(setKept)
  }, [services])
  const words = STRINGS.start
  return (
    <main className="start">
      <div className="start-inner">
        <div className="leader" aria-hidden="true" />
        <h1>{STRINGS.program}</h1>
        <p className="purpose">{STRINGS.purpose}</p>
        <div className="start-buttons">
          <Button
            className="button large"
            isDisabled={isOpening}
            onPress={() => void services.pickReel()}
          >
            {words.openReel}
          </Button>
          <Button
            className="button large"
            isDisabled={isOpening}
            onPress={() => void services.pickJob()}
          >
            {words.openJob}
          </Button>
          <Button
            className="button large"
            isDisabled={isOpening}
            onPress={() => void services.openSample()}
          >
            {words.openSample}
          </Button>
        </div>
        <p className="dim" role="status">
          {isOpening ? words.opening : words.drop}
        </p>
        {kept.length > 0 && (
          <section aria-label={words.kept} className="kept">
            <h2>{words.kept}</h2>
            <ul>
              {kept.map((job) => (
                <li key={job.key}>
                  <button type="button" onClick={() => void services.openShelved(job.key)}>
                    <span>{job.title}</span>
                    <span className="dim">
                      {job.cues} {job.cues === 1 ? 'cue' : 'cues'} ·{' '}
                      {new Date(job.at).toLocaleString('en-GB', {
                        dateStyle: 'medium',
                        timeStyle: 'short',
                      })}
                    </span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        )}
        <p className="dim">{words.nothingLeaves}</p>
        <Button className="link dim" onPress={() => setOpened(store, 'settings')}>
          Keys, controls and sizes of text
        </Button>
      </div>
    </main>
  )
}
