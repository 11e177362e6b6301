import { useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { CompareChoice } from './CompareChoice.tsx'
import { DisplayChoice } from './DisplayChoice.tsx'
import { HeldFrames } from './HeldFrames.tsx'

/** What the picture shows, and how. */
export const PictureBar = () => {
  const view = useAppState((state) => state.view)
  return (
    <div className="picture-bar" role="toolbar" aria-label="Picture">
      <CompareChoice />
      <CommandButton id="hold-frame" label="Hold" />
      <HeldFrames />
      <span className="spacer" />
      <CommandButton id="scanned" label="Scanned" isPressed={view.isPeeking} />
      <CommandButton id="excursions" label="Excursions" isPressed={view.showsExcursions} />
      <CommandButton id="safe-areas" label="Safe areas" isPressed={view.showsSafeAreas} />
      <CommandButton id="aperture" label="Whole scan" isPressed={view.showsAperture} />
      <DisplayChoice />
    </div>
  )
}
