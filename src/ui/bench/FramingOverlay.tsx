import { arrangementOf } from '../../store/compared.ts'
import { reelOf } from '../../store/queries.ts'
import { useAppState } from '../appContext.ts'
import type { Size } from '../parts/useElementSize.ts'
import { FramingBox } from './FramingBox.tsx'
import { SafeAreas } from './SafeAreas.tsx'

/**
 * What lies over the picture about its framing: the delivered frame on the whole scan, and the safe
 * areas. Nothing while the scanned picture is looked at, or where several stand side by side.
 */
export const FramingOverlay = ({ size }: { size: Size }) => {
  const view = useAppState((state) => state.view)
  const isTiled = useAppState((state) => arrangementOf(state) === 'side-by-side')
  const hasPicture = useAppState((state) => state.media === 'ready')
  const aspect = useAppState((state) => reelOf(state)?.media.displayAspect)
  if (aspect === undefined || !hasPicture || view.isPeeking || isTiled) return null
  return (
    <>
      {view.showsSafeAreas && <SafeAreas size={size} aspect={aspect} />}
      {view.showsAperture && <FramingBox size={size} aspect={aspect} />}
    </>
  )
}
