import { useEffect, useRef } from 'react'
import { drawVectorscope } from '../../render/drawVectorscope.ts'
import { drawWaveform } from '../../render/drawWaveform.ts'
import { jobOf, profileOf, reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { useElementSize } from '../parts/useElementSize.ts'
import { useFrameLoop } from '../parts/useFrameLoop.ts'
import { TolerancePanel } from './TolerancePanel.tsx'

type Draw = (context: CanvasRenderingContext2D, width: number, height: number) => void

/** A canvas that fills its place and is drawn again at each new reading. */
const InstrumentCanvas = ({ label, draw }: { label: string; draw: Draw }) => {
  const { services } = useApp()
  const place = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const { width, height } = useElementSize(place)
  const redraw = useFrameLoop(() => {
    const context = canvas.current?.getContext('2d')
    if (!canvas.current || !context || width === 0) return
    const ratio = window.devicePixelRatio || 1
    const pixelWidth = Math.round(width * ratio)
    const pixelHeight = Math.round(height * ratio)
    if (canvas.current.width !== pixelWidth) canvas.current.width = pixelWidth
    if (canvas.current.height !== pixelHeight) canvas.current.height = pixelHeight
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    draw(context, width, height)
  })
  useEffect(() => services.readings.subscribe(redraw), [services, redraw])
  useEffect(redraw)
  return (
    <div className="instrument-place" ref={place}>
      <canvas ref={canvas} role="img" aria-label={label} style={{ width, height }} />
    </div>
  )
}

/** The waveform monitor, the vectorscope and the tolerance of the picture under the line. */
export const Instruments = () => {
  const { services } = useApp()
  const job = useAppState(jobOf)
  const reel = useAppState(reelOf)
  if (!job || !reel) return null
  const profile = profileOf(job)
  const { matrix } = reel.media
  return (
    <section className="instruments" aria-label="Instruments">
      <div className="panel">
        <h2>
          waveform · luma <span>% · mV</span>
        </h2>
        <InstrumentCanvas
          label="Luma waveform of the graded picture"
          draw={(context, width, height) => {
            const reading = services.readings.current()
            drawWaveform(
              context,
              reading && { counts: reading.waveform, columns: reading.waveformColumns },
              {
                width,
                height,
                limits: profile.luma,
              },
            )
          }}
        />
      </div>
      <div className="panel">
        <h2>
          vectorscope <span>75 % · 100 %</span>
        </h2>
        <InstrumentCanvas
          label="Vectorscope of the graded picture"
          draw={(context, width, height) => {
            const reading = services.readings.current()
            drawVectorscope(
              context,
              reading && { counts: reading.vectorscope, size: reading.vectorscopeSize },
              {
                width,
                height,
                matrix,
              },
            )
          }}
        />
      </div>
      <TolerancePanel />
    </section>
  )
}
