import { setJobInfo } from '../../core/job/commands/setJobInfo.ts'
import { setReel } from '../../core/job/commands/setReel.ts'
import type { Reel, StatedBy } from '../../core/job/job.ts'
import type { MatrixName, RangeName } from '../../core/picture/planes.ts'
import type { Gauge } from '../../core/time/footage.ts'
import { GAUGE_WORDS } from '../../core/time/gaugeWords.ts'
import { framesPerSecond, secondsAt } from '../../core/time/rate.ts'
import { formatTimecode, parseTimecode } from '../../core/time/timecode.ts'
import { perform } from '../../store/document.ts'
import { tellProblems } from '../../store/notices.ts'
import { jobOf, reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { AgreementTick } from '../parts/AgreementTick.tsx'
import { Choice } from '../parts/Choice.tsx'
import { CommandButton } from '../parts/CommandButton.tsx'
import { formatNumber } from '../parts/numberText.ts'
import { TextField } from '../parts/TextField.tsx'
import { STRINGS } from '../strings.ts'
import { BaseSection } from './BaseSection.tsx'
import { FilmArithmetic } from './FilmArithmetic.tsx'
import { FilmSection } from './FilmSection.tsx'
import { GuideSection } from './GuideSection.tsx'
import { ToleranceSection } from './ToleranceSection.tsx'

const GAUGES = Object.entries(GAUGE_WORDS).map(([id, label]) => ({ id, label }))

const statedBy = (by: StatedBy): string => (by === 'file' ? 'the file states it' : 'stated by hand')

/** The particulars of the reel and of its scan: what all numbers in the list rest on. */
export const Prepare = () => {
  const { store } = useApp()
  const job = useAppState(jobOf)
  const reel = useAppState(reelOf)
  if (!job || !reel) return null
  const change = (edit: (before: Reel) => Reel, label: string): boolean =>
    perform(store, (before) => setReel(before, reel.id, edit, label))
  const { media } = reel
  const duration = secondsAt(reel.frames, reel.rate)
  return (
    <main className="page prepare" aria-label="Prepare">
      <div className="prepare-column">
        <section aria-label="Job and reel">
          <h2>Job and reel</h2>
          <TextField
            label="Title"
            value={job.info.job.title}
            onCommit={(title) => perform(store, (j) => setJobInfo(j, (i) => ({ ...i, title })))}
          />
          <TextField
            label="Reel"
            value={reel.name}
            onCommit={(name) => change((r) => ({ ...r, name }), 'Reel name')}
          />
          <Choice
            label="Gauge"
            options={GAUGES}
            value={reel.gauge}
            onChange={(gauge) => change((r) => ({ ...r, gauge: gauge as Gauge }), 'Gauge')}
          />
          <TextField
            label="Timecode of the first frame"
            value={formatTimecode(reel.startCount, reel.rate, reel.isDropFrame)}
            hint="hours:minutes:seconds:frames"
            onCommit={(text) => {
              const count = parseTimecode(text, reel.rate, reel.isDropFrame)
              if (count.ok)
                return change((r) => ({ ...r, startCount: count.value }), 'Timecode start')
              tellProblems(store, count.problems)
              return false
            }}
          />
          <AgreementTick />
          <div className="button-row">
            <CommandButton id="close" />
            <CommandButton id="open-reel" label="Open another reel…" />
            <CommandButton id="import-list" />
          </div>
        </section>
        <section aria-label="The scan">
          <h2>The scan</h2>
          <dl>
            <dt>File</dt>
            <dd>{media.name}</dd>
            <dt>Coded as</dt>
            <dd>
              {media.codec} in {media.container}, {media.depth} bit,{' '}
              {media.layout === 'rgb' ? 'R′G′B′' : `4:${media.layout[1]}:${media.layout[2]}`}
            </dd>
            <dt>Picture</dt>
            <dd>
              {media.width} × {media.height}, shown {formatNumber(media.displayAspect, 3)} : 1
            </dd>
            <dt>Length</dt>
            <dd>
              {reel.frames} frames, {formatNumber(duration, 1)} s at{' '}
              {formatNumber(framesPerSecond(reel.rate), 3)} frames/s ({statedBy(media.rateBy)})
            </dd>
          </dl>
          {media.layout !== 'rgb' && (
            <Choice
              label={`Luma equation (${statedBy(media.matrixBy)})`}
              options={(['bt601', 'bt709', 'bt2020'] as const).map((id) => ({
                id,
                label: STRINGS.matrices[id],
              }))}
              value={media.matrix}
              onChange={(id) =>
                change(
                  (r) => ({
                    ...r,
                    media: { ...r.media, matrix: id as MatrixName, matrixBy: 'person' },
                  }),
                  'Luma equation',
                )
              }
            />
          )}
          <Choice
            label={`Range of codes (${statedBy(media.rangeBy)})`}
            options={(['narrow', 'full'] as const).map((id) => ({ id, label: STRINGS.ranges[id] }))}
            value={media.range}
            onChange={(id) =>
              change(
                (r) => ({
                  ...r,
                  media: { ...r.media, range: id as RangeName, rangeBy: 'person' },
                }),
                'Range of codes',
              )
            }
          />
          <CommandButton id="another-scan" />
        </section>
        <ToleranceSection />
      </div>
      <div className="prepare-column">
        <FilmSection key={reel.id} reel={reel} />
        <FilmArithmetic key={`${reel.id} ${reel.gauge}`} reel={reel} />
      </div>
      <div className="prepare-column">
        <BaseSection reel={reel} />
        <GuideSection reel={reel} />
      </div>
    </main>
  )
}
