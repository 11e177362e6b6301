import { useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'

/** What the picture shows, and how. */
export const PictureBar = () => {
  const view = useAppState((state) => state.view)
  return (
    <div className="picture-bar" role="toolbar" aria-label="Picture">
      <CommandButton id="wipe" label="Wipe" isPressed={view.arrangement === 'wipe'} />
      <CommandButton id="scanned" label="Scanned" isPressed={view.isPeeking} />
      <CommandButton id="excursions" label="Excursions" isPressed={view.showsExcursions} />
      <span className="spacer" />
      <span className="dim">R′G′B′ as coded for BT.1886, shown as they are</span>
    </div>
  )
}
